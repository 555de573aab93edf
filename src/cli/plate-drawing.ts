import { type PlatePicture, type PlatePoint, type PressedArea, platePicture } from '../charts/plate-picture.ts';
import { standalone } from '../charts/standalone.ts';
import type { DieState, PadState, PlateBalance, PointForce } from '../steps/plate-balance.ts';

/** The balance of a plate as a picture: an SVG file's text. */
export function drawPlate(balance: PlateBalance): string {
  const { tiltX, tiltY } = balance;
  const tilt = { x: 1e3 * (tiltX?.value ?? 0), y: 1e3 * (tiltY?.value ?? 0) };
  const slope = Math.hypot(tilt.x, tilt.y);
  const picture: PlatePicture = {
    title: `${balance.title}: the plate from above`,
    areas: [...balance.dies.map(dieArea), ...balance.pads.map(padArea)],
    points: [
      ...balance.screws.map((screw) => point(screw, 'screw')),
      ...balance.stops.map((stop) => point(stop, 'stop')),
    ],
    tilt: { ...tilt, text: slope < 0.01 ? 'level' : `lower this way by ${slope.toPrecision(2)} mm a metre` },
  };
  return `${standalone(platePicture(picture, { width: 720 }))}\n`;
}

const millimetres = (metres: number) => 1e3 * metres;

function inMillimetres({ x, y, width, depth }: PadState['field']) {
  return { x: millimetres(x), y: millimetres(y), width: millimetres(width), depth: millimetres(depth) };
}

function dieArea(die: DieState): PressedArea {
  const { centre, alongX, alongY } = die.pressure;
  return {
    kind: 'die',
    ...inMillimetres(die.field),
    title: die.title,
    words: die.touches
      ? [
          die.force.text,
          `mean ${die.meanPressure.text}`,
          `highest ${die.highestPressure.text}`,
          ...(die.contact.value < 1 ? [`touched by ${(100 * die.contact.value).toFixed(0)} %`] : []),
          ...(die.noContact ? [`no contact: ${die.noContact.text}`] : []),
        ]
      : [`no contact, gap ${die.gap.text}`],
    pressure: { centre: centre / 1e3, alongX: alongX / 1e6, alongY: alongY / 1e6 },
    label: die.touches ? `${shortPressure(die.meanPressure.value)}` : 'no contact',
    touches: die.touches,
    force: die.touches ? { x: millimetres(die.centre.x), y: millimetres(die.centre.y) } : null,
  };
}

function padArea(pad: PadState): PressedArea {
  const touches = pad.state !== 'no-contact';
  return {
    kind: 'pad',
    ...inMillimetres(pad.field),
    title: pad.title,
    words: touches
      ? [pad.force.text, pad.pressure.text, `strain ${pad.strain.text}`, padWords[pad.state]].filter(Boolean)
      : [`no contact, gap ${(-millimetres(pad.compression.value)).toPrecision(3)} mm`],
    pressure: { centre: pad.pressure.value / 1e3, alongX: 0, alongY: 0 },
    label: touches ? shortPressure(pad.pressure.value) : 'no contact',
    touches,
    force: null,
  };
}

function point({ title, spot, force }: PointForce, kind: PlatePoint['kind']): PlatePoint {
  return { kind, title, x: millimetres(spot.x), y: millimetres(spot.y), label: force.text, words: [force.text] };
}

const shortPressure = (pascals: number) => `${Number((pascals / 1e3).toPrecision(3))} kPa`;

/** How a pad fares, for people. */
export const padWords: Readonly<Record<PadState['state'], string>> = {
  'no-contact': 'no contact',
  loose: 'loose: under 20 % its contact is uncertain',
  usual: '',
  strong: 'strong: over 45 % oil bleeds and the part is pressed',
  'beyond-curve': 'beyond the last point of its curve',
};

import { describe, expect, test } from 'vitest';
import { recordedRun } from './recordings.test-data.ts';
import { levelChannel, type Window, windowsOf } from './windows.ts';

async function windowsIn(id: 'step' | 'stair') {
  const { run, readings } = await recordedRun(id);
  const level = levelChannel(run, readings)!;
  return { level, windows: windowsOf(run, readings, level), readings };
}

const celsius = (window: Window, channel: string) => window.channels[channel].mean - 273.15;

describe('step: idle, full load, idle', () => {
  test('windows, and what each shows', async () => {
    const { level, windows } = await windowsIn('step');
    expect(level.name).toBe('power_instant_W');
    // The board sleeps for eight seconds (lowest clock, 72 W) before it idles at its full clock.
    expect(windows.map(({ id }) => id)).toEqual(['idle-1', 'idle-2', 'load-1', 'idle-3']);
    const [, before, load, after] = windows;
    // By numpy from the same file, means of the last seconds: 121 W and 38.0 °C before; 697 W, 69.0 °C and 63.1 °C at the end of the load.
    expect(before.channels.power_instant_W.mean).toBeCloseTo(121, 0);
    expect(celsius(before, 'die_temp_C')).toBeCloseTo(38, 1);
    expect(Math.abs(load.channels.power_average_W.mean - 697)).toBeLessThan(1);
    expect(celsius(load, 'die_temp_C')).toBeCloseTo(69, 1);
    expect(celsius(load, 'memory_temp_C')).toBeCloseTo(63.1, 1);
    for (const channel of ['die_temp_C', 'memory_temp_C', 'power_average_W']) {
      expect(load.channels[channel].settled).toBe(true);
      expect(after.channels[channel].settled).toBe(true);
    }
    expect(before.channels.memory_temp_C).toMatchObject({ settled: false });
  });
});

describe('stair: five levels of a load that is switched on and off', () => {
  test('exactly five levels behind the idle ones, their edges to half a second', async () => {
    const { windows } = await windowsIn('stair');
    expect(windows.map(({ id }) => id)).toEqual(['idle-1', 'idle-2', 'load-1', 'load-2', 'load-3', 'load-4', 'load-5']);
    // By eye in half-second means by numpy: the levels begin at about 14.3, 54.5, 95, 134 and 173.5 s, the last ends at 214.6 s.
    const loads = windows.slice(2);
    const edges = [14.3, 54.5, 95, 134, 173.5, 214.6];
    for (const [k, { from, to }] of loads.entries()) {
      expect(Math.abs(from - 1 - edges[k])).toBeLessThan(0.5);
      expect(Math.abs(to + 1 - edges[k + 1])).toBeLessThan(0.5);
    }
  });

  test('power agrees with the board’s energy counter over each window within what is stated', async () => {
    const { windows, readings } = await windowsIn('stair');
    const counter = readings.channels.get('energy_J')!;
    for (const { id, to, averaged, channels } of windows.slice(2)) {
      const rows = [...readings.time.keys()].filter((i) => readings.time[i] >= to - averaged && readings.time[i] <= to);
      const [first, last] = [rows[0], rows[rows.length - 1]];
      const counted = (counter[last] - counter[first]) / (readings.time[last] - readings.time[first]);
      const { mean, u } = channels.power_instant_W;
      // The counter steps about ten times a second: over ten seconds it is known to about one part in 250 (two steps, each a rectangle).
      expect(Math.abs(mean - counted), id).toBeLessThan(2 * Math.hypot(u!, counted / 250));
    }
  });

  test('temperatures of the last seconds; after 40 s, two time constants, none has been shown to have settled', async () => {
    const { windows } = await windowsIn('stair');
    const loads = windows.slice(2);
    // By numpy: means of ten seconds that end about a second before the next level.
    for (const [k, die] of [43.8, 50.1, 59.2, 66.8, 70.4].entries())
      expect(Math.abs(celsius(loads[k], 'die_temp_C') - die)).toBeLessThan(0.15);
    for (const { channels } of loads)
      for (const channel of ['die_temp_C', 'memory_temp_C'])
        expect(channels[channel]).toMatchObject({ settled: false, why: expect.stringMatching(/still|too short/) });
  });

  test('whole degrees are never known better than a step over √12', async () => {
    const { windows } = await windowsIn('stair');
    for (const { channels } of windows) expect(channels.die_temp_C.u!).toBeGreaterThan(0.2886);
  });
});

test('a run without a channel of power has no windows', async () => {
  const { run, readings } = await recordedRun('step');
  const blind = { ...run, channels: run.channels.filter(({ kind }) => kind !== 'power') };
  expect(levelChannel(blind, readings)).toBeNull();
});

test('a channel that has no reading at the end of a window isn’t in it', async () => {
  const { run, readings } = await recordedRun('step');
  const broken = readings.channels.get('die_temp_C')!.map((value, i) => (readings.time[i] > 150 ? Number.NaN : value));
  const channels = new Map([...readings.channels, ['die_temp_C', broken]]);
  const holed = { ...readings, channels };
  const windows = windowsOf(run, holed, levelChannel(run, holed)!);
  expect(windows.map((window) => 'die_temp_C' in window.channels)).toEqual([true, true, false, false]);
});

import type { StepChange, Study } from '../study/study.ts';
import { type DescribedChange, describeChange } from './changes-of.ts';
import { stepOf } from './plan.ts';
import { isByHand } from './work.ts';

/** One thing to take back. */
export interface UndoneChange {
  /** Step whose change it is. */
  readonly step: string;
  /** The change, with what stands there now as its content after it. */
  readonly change: DescribedChange;
  /** Later steps that had changed it again; what they did goes with it. */
  readonly changedAgain: readonly string[];
}

/** The way from one step back to an earlier one. */
export interface UndoWay {
  readonly from: string;
  readonly to: string;
  /** In the order they are taken back: the last one made first. */
  readonly changes: readonly UndoneChange[];
  /** Whether anybody touches the board for it. */
  readonly byHand: boolean;
}

/**
 * The changes between two steps in reverse. A change of something that an earlier one among them had brought isn't taken back by itself: when a 22 mΩ
 * had been soldered on top and later became 12 mΩ, the 12 mΩ is taken off, and that is all. `to` comes before `from`, or is the same.
 */
export function undoWay(study: Study, from: string, to: string): UndoWay {
  const changes = takenBack(study, from, to).map(({ step, index, change, changedAgain }): UndoneChange => {
    const at = study.steps.findIndex(({ id }) => id === step);
    // Its content is what stands at the last step, where the titles are looked for.
    const described = describeChange(change, `change-${index + 1}`, study.steps[at - 1], stepOf(study, from));
    return { step, change: described, changedAgain };
  });
  // What had been changed and is again as it was needs no hand.
  const left = changes.filter(({ change }) => change.fields.length > 0);
  return { from, to, changes: left, byHand: left.some(({ change }) => isByHand(change.work)) };
}

/** The changes to take back, in their order, each with what stands there by then as its content after it. */
export function takenBack(study: Study, from: string, to: string): readonly Standing[] {
  const [last, first] = [from, to].map((id) => study.steps.indexOf(stepOf(study, id)));
  if (first > last) throw new Error(`step "${to}" comes after "${from}"`);
  const list: Standing[] = [];
  for (let i = last; i > first; i--) {
    const { id, changes } = study.steps[i];
    for (const [index, change] of [...changes.entries()].reverse()) takeBack(list, id, index, change);
  }
  return list;
}

interface Standing {
  readonly step: string;
  readonly index: number;
  readonly change: StepChange;
  readonly changedAgain: readonly string[];
  /** Its path means another thing in the steps before, because a removal has moved it up in its list. */
  readonly moved: boolean;
}

/** Puts one more, earlier change behind those that are taken back before it. */
function takeBack(list: Standing[], step: string, index: number, change: StepChange): void {
  const removed = change.after === undefined;
  let after = change.after;
  const changedAgain: string[] = [];
  if (!removed) {
    // From the earliest of the later changes to the latest.
    for (let k = list.length - 1; k >= 0; k--) {
      const later = list[k];
      const inside = later.change.at === change.at || later.change.at.startsWith(`${change.at}.`);
      if (!inside || later.moved) continue;
      after = withContent(after, keysBelow(change.at, later.change.at), later.change.after);
      changedAgain.push(...(later.step === step ? [] : [later.step]), ...later.changedAgain);
      list.splice(k, 1);
    }
  } else if (/\.\d+$/.test(change.at)) {
    const siblings = change.at.slice(0, change.at.lastIndexOf('.') + 1);
    list.forEach((later, k) => {
      if (later.change.at.startsWith(siblings)) list[k] = { ...later, moved: true };
    });
  }
  // What had been brought and has been removed again leaves nothing to take back.
  if (!removed && after === undefined && change.before === undefined) return;
  list.push({ step, index, change: { ...change, after }, changedAgain: [...new Set(changedAgain)], moved: false });
}

function keysBelow(path: string, inner: string): string[] {
  return inner === path ? [] : inner.slice(path.length + 1).split('.');
}

/** A copy of `content` with `value` at the place the keys lead to; undefined removes what is there. */
function withContent(content: unknown, [key, ...rest]: readonly string[], value: unknown): unknown {
  if (key === undefined) return value;
  if (Array.isArray(content)) {
    const items = [...content];
    const inner = withContent(items[Number(key)], rest, value);
    if (inner === undefined) items.splice(Number(key), 1);
    else items[Number(key)] = inner;
    return items;
  }
  const { [key]: old, ...others } = (typeof content === 'object' && content !== null ? content : {}) as Record<
    string,
    unknown
  >;
  const inner = withContent(old, rest, value);
  return inner === undefined ? others : { ...others, [key]: inner };
}

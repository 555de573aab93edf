import { type ChartState, stateIcon } from '../charts/state-mark.ts';
import { Picture } from './picture.tsx';

/** A state as shape and word. */
export function StateWord({ state, word }: { state: ChartState; word: string }) {
  return (
    <span class={`state state-${state}`}>
      <Picture svg={stateIcon(state)} inline />
      {word}
    </span>
  );
}

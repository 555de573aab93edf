import type { FaultCode } from '../../fault/words/index.ts';
import type { PlateEnding } from './plate-on-board.ts';

/** What to tell about a plate that has found no rest. */
export function plateFault(ending: Exclude<PlateEnding, 'solved'>): FaultCode {
  if (ending === 'unsupported') return 'board/plate-unsupported';
  return ending === 'unsettled' ? 'board/plate-unsettled' : 'board/plate-impossible';
}

import type { Place } from '../../fault/fault.ts';
import type { Outline } from '../outline.ts';
import type { Path, Raw } from '../raw.ts';

/** What a check of the board's structure sees. */
export interface CheckInput {
  readonly raw: Raw;
  readonly outline: Outline;
  readonly place: (path: Path, part?: 'key' | 'value') => Place;
}

import type { StallEntry } from '../../../records/stall-entry.ts';
import { say } from '../../say.ts';

/** What a line of a stall's sheet is about. */
export const lineKinds: Readonly<Record<StallEntry['what'], string>> = {
  ready: say`Ready to open`,
  open: say`Opening count`,
  sold: say`Sold`,
  paid: say`Paid`,
  brought: say`Goods brought`,
  drop: say`Cash drop`,
  count: say`Closing count`,
  both: say`Counts added up`,
  undo: say`Undone`,
};

import type { StallLog } from '../../storage/indexeddb/stall-log.ts';

/** Lines of a stall of the made-up book: there while its page is open, and kept nowhere. */
export function forgetfulLog(): StallLog {
  return { read: async () => [], write: async () => true };
}

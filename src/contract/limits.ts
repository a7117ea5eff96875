/** How much one request may carry. A limit that is reached is named in the answer (413). */

/** Bytes of a JSON body: about 3,000 records of the usual size. */
export const JSON_BODY_MAX_BYTES = 1024 * 1024;
/** Bytes of a book file that is added in one go: far more than a season. */
export const FILE_BODY_MAX_BYTES = 64 * 1024 * 1024;
/** Records in one append; a phone sends its outbox in parts of this size. */
export const APPEND_MAX_RECORDS = 1000;
/** Records in one page of reading; the reader goes on from `last`. */
export const PAGE_MAX_RECORDS = 10_000;
/** Objects and lists within each other in a JSON body. */
export const JSON_DEPTH_MAX = 32;

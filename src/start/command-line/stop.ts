/**
 * Ends a command with one line on standard error. Thrown only in this room, caught in cratebook.ts.
 */
export class Stop extends Error {
  override name = 'Stop';
  /** 2: the input cannot be used. 1: findings. */
  readonly code: 1 | 2;

  constructor(message: string, code: 1 | 2 = 2) {
    super(message);
    this.code = code;
  }
}

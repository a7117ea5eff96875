/** Why a file from outside cannot be read: where, what was said, what is wanted. */
export interface FileRefusal {
  /** Line of the text from 1, or 0 for the file as a whole. */
  readonly line: number;
  readonly field: string;
  readonly said: string;
  readonly wanted: string;
}

/** Why a line cannot be read as a record (yet): what was said, and what is wanted. */
export interface LineTrouble {
  readonly name:
    | 'nothing_written'
    | 'too_long'
    | 'word_not_known'
    | 'word_does_not_belong'
    | 'verb_missing'
    | 'part_missing'
    | 'number_does_not_fit'
    | 'too_many_meanings';
  /** The words it is about; empty where something is missing. */
  readonly said: string;
  /** What is wanted, in words for a person. */
  readonly wanted: string;
  /** The known word that is nearest to one that is not known. */
  readonly nearest?: string;
}

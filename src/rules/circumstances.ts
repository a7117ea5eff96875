/** What a rule may ask beyond the book itself. */
export interface Circumstances {
  /** True when the closing list has no open item; asked only where a record closes the season. */
  isReadyToClose(): boolean;
}

/** A part of a subject that members ask about and that is not built: one honest sentence, so that it is not misread as something that is. */
export interface NotYet {
  readonly name: string;
  /** Words and phrases that only this has; one that the catalog comes to use is the catalog's from then on. */
  readonly words: readonly string[];
  readonly sentence: string;
  /** What can be asked instead. */
  readonly line: string;
}

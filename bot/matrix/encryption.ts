/**
 * The seam for end-to-end encryption. As long as there is none, what this says is all that an encrypted room is told, once and in clear;
 * intake keeps encrypted events as unreadable, and the sender refuses to send anything else there.
 */
export interface Encryption {
  readonly available: false;
  /** For the log and the health line. */
  readonly why: string;
  /** One sentence for the room. */
  readonly sentence: string;
}
export const encryption = (): Encryption => ({
  available: false,
  why: "Encrypted rooms can't be served: this version has no encryption yet.",
  sentence: 'This room is encrypted, and I can read and answer only in rooms that are not. Please invite me to one without encryption.',
});

/** Why changes are not made. */

/** Not allowed, or not possible as things stand now. The message is a sentence for the member. */
export class ChangeRefused extends Error {
  override readonly name = 'ChangeRefused';
}
/** Something stands elsewhere than the message was worked out on: nothing is changed, and it is worked out again. */
export class Moved extends Error {
  override readonly name = 'Moved';
}

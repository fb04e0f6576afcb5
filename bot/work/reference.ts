import { createHash } from 'node:crypto';

/** The reference that a member quotes when something broke: short, and found in the log. */
export const referenceOf = (event: string): string => createHash('sha256').update(event).digest('hex').slice(0, 8).toUpperCase();

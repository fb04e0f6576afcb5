/** A line that can be typed, inside a sentence: with the mark that it has to begin with here. Choices are given theirs where they are shown. */
import type { Room } from '../context.js';

export const typed = (line: string, { prefix = '' }: Pick<Room, 'prefix'>): string => `${prefix}${line}`;

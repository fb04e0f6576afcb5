/** A line and its reading, in the notation of ../reads.ts. */
export type Line = readonly [line: string, reading: string];

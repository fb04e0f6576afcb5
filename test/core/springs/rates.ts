/** What the laws are held against: springs of one rate each, put together. N/m. */

/** One on another: the compliances add. */
export const inSeriesRate = (...rates: readonly number[]): number => 1 / rates.reduce((sum, rate) => sum + 1 / rate, 0);
/** Side by side: the rates add. */
export const inParallelRate = (...rates: readonly number[]): number => rates.reduce((sum, rate) => sum + rate, 0);

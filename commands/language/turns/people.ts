/** What a person weighs. */

/** `180 lb` is nobody's car: limits of what a person weighs, lb and kg. */
export const person = (amount: string, unit: string): boolean => {
  const [least, most] = /^k/i.test(unit) ? [30, 200] : [66, 440];
  return Number(amount) >= least && Number(amount) <= most;
};

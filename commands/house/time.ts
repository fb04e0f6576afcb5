/** When something was, in words; in UTC, for the bot does not know where its members live. */

const minute = 60_000;
const hour = 60 * minute;
export const day = 24 * hour;
const weekdays = ['sunday', 'monday', 'tuesday', 'wednesday', 'thursday', 'friday', 'saturday'];
const months = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

/** `12 min ago`, `3 h ago`, `2 days ago`, `13 May 2026`. */
export function ago(at: number, now: number): string {
  const past = now - at;
  if (past < minute) return 'just now';
  if (past < hour) return `${Math.floor(past / minute)} min ago`;
  if (past < day) return `${Math.floor(past / hour)} h ago`;
  if (past < 14 * day) return `${Math.floor(past / day)} ${past < 2 * day ? 'day' : 'days'} ago`;
  const date = new Date(at);
  return `${date.getUTCDate()} ${months[date.getUTCMonth()]} ${date.getUTCFullYear()}`;
}
/** The end of the day that is meant (UTC): `sunday` the last one that is over or under way, `yesterday`, `today`. Undefined for other words. */
export function endOfDay(word: string, now: number): number | undefined {
  const startOfToday = Math.floor(now / day) * day;
  const plain = word.toLowerCase().replace(/^(last|on) /, '');
  if (plain === 'today') return startOfToday + day;
  if (plain === 'yesterday') return startOfToday;
  const wanted = weekdays.findIndex((name) => name === plain || (plain.length >= 3 && name.startsWith(plain)));
  if (wanted < 0) return undefined;
  const since = (new Date(now).getUTCDay() - wanted + 7) % 7;
  return startOfToday - since * day + day;
}

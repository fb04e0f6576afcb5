/** A kind for tests alone: an event of a club, a room's, to which several members say that they come. Its file, and nothing else. */
import { z } from 'zod';
import { fieldByField, type Kind, rowByRow, together } from '../../../../commands/records/kind.js';

const comer = z.strictObject({ member: z.string(), with: z.int().nonnegative() });
const data = z.strictObject({
  title: z.string(),
  titledIn: z.string(),
  day: z.iso.date('a day such as 2027-05-01'),
  coming: z.array(comer),
});
export type EventData = z.infer<typeof data>;

export const events: Kind<EventData, number> = {
  name: 'test event',
  owner: 'room',
  schema: data,
  pieces: together<EventData>(
    data,
    fieldByField('title', 'titledIn', 'day'),
    rowByRow<EventData, z.infer<typeof comer>>(
      'coming',
      ({ coming }) => coming,
      ({ member }) => member,
    ),
  ),
  rows: (was, is) => [
    { label: (is ?? was)?.data.title ?? 'event', cells: [was?.data.day ?? 'not planned', is?.data.day ?? 'not planned'] },
  ],
  redacted: (event, cause) => (event.titledIn === cause ? { ...event, title: '' } : event),
  without: (event, member) => ({ ...event, coming: event.coming.filter((one) => one.member !== member) }),
  exported: {
    as: 'testEvents',
    schema: z.strictObject({ title: z.string(), day: z.string(), coming: z.array(comer) }),
    write: ({ data: { titledIn: _, ...event } }) => event,
  },
  gone: 'That event is not planned any more.',
};

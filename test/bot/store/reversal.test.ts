/** What an edit may take back, and what the car is without it. */
import { beforeEach, expect, test } from 'vitest';
import type { Store } from '../../../bot/store/database.js';
import { garageFor } from '../../../bot/store/garage.js';
import { garageWithout, revertible, withReversals } from '../../../bot/store/reversal.js';
import type { Change } from '../../../commands/context.js';
import { change, facts, headOf, meetClub, newCar, newEvent, paddock, record, robin, sam } from './club.js';
import { opened } from './fresh.js';

let store: Store;
let turnip: number;
beforeEach(() => {
  store = opened();
  meetClub(store);
  turnip = newCar(store, robin, 'turnip', facts({ mass: 1200, wheelbase: 2.5 }));
});
const mine = () => garageFor(store, robin, paddock);
const without = (event: string | readonly string[], owner = robin) => revertible(store, event, owner);

test('a change that nothing touched since: the facts as they were, of later changes as they are', () => {
  const event = newEvent();
  const before = headOf(store, robin, turnip);
  const made = record(store, robin, turnip, { mass: 1250, 'front.spring.rate': 70000 }, event);
  const head = record(store, robin, turnip, { wheelbase: 2.6 });
  expect(without(event)).toEqual({
    revertible: true,
    cars: [
      {
        car: turnip,
        revisions: [made],
        head,
        touched: ['front.spring.rate', 'mass'],
        changedSince: [],
        facts: facts({ mass: 1200, wheelbase: 2.6 }),
        measuredIn: before,
      },
    ],
  });
});

test('a question, and an event that nobody knows, changed nothing', () => {
  expect(without('$question')).toEqual({ revertible: true, cars: [] });
});

test.each([
  ['another value', { mass: 1300 }],
  ['the value from before', { mass: 1200 }],
])('touched since by %s: not taken back', (_, since) => {
  const event = newEvent();
  record(store, robin, turnip, { mass: 1250 }, event);
  record(store, robin, turnip, since);
  expect(without(event)).toMatchObject({ revertible: false, because: 'What it changed was changed again since: weight of the car.' });
});

test('a fact that was forgotten since, or that the event forgot', () => {
  const adds = newEvent();
  record(store, robin, turnip, { 'front.spring.rate': 70000 }, adds);
  const head = headOf(store, robin, turnip);
  const forgets = newEvent();
  const left = facts({ mass: 1200, wheelbase: 2.5 });
  change(store, robin, [{ change: 'record', car: turnip, head, facts: left, why: 'forget it', measuredIn: undefined }], forgets);
  expect(without(adds)).toMatchObject({ revertible: false, because: 'What it changed was changed again since: front spring rate.' });
  const back = without(forgets);
  expect(back.revertible).toBe(true);
  expect(back.cars[0]?.facts.get('front.spring.rate')?.value).toBe(70000);
});

test('the same number with another tolerance or source is another fact', () => {
  const event = newEvent();
  record(store, robin, turnip, { mass: 1250 }, event);
  const head = mine().mine[0]!.head;
  const now = new Map(head.facts).set('mass', { value: 1250, within: 5, evidence: 'measured', source: 'told' });
  change(store, robin, [{ change: 'record', car: turnip, head: head.id, facts: now, why: 'x', measuredIn: undefined }]);
  expect(without(event).revertible).toBe(false);
});

test('several revisions of one event are taken back together', () => {
  const event = newEvent();
  const head = headOf(store, robin, turnip);
  const applied = change(
    store,
    robin,
    [
      { change: 'record', car: turnip, head, facts: facts({ mass: 1250, wheelbase: 2.5 }), why: 'a', measuredIn: 'now', as: -1 },
      { change: 'record', car: turnip, head: -1, facts: facts({ mass: 1250, wheelbase: 2.7 }), why: 'b', measuredIn: -1, as: -2 },
    ],
    event,
  );
  expect(without(event).cars[0]).toMatchObject({
    revisions: [applied.revisions.get(-1), applied.revisions.get(-2)],
    touched: ['mass', 'wheelbase'],
    facts: facts({ mass: 1200, wheelbase: 2.5 }),
    // The state was taken in a revision that goes.
    measuredIn: head,
  });
});

test('an event that did more than record facts is not taken back', () => {
  const event = newEvent();
  const head = headOf(store, robin, turnip);
  change(
    store,
    robin,
    [
      { change: 'record', car: turnip, head, facts: facts({ mass: 1250 }), why: 'a', measuredIn: 'now' },
      { change: 'keep', car: turnip, name: 'dry', revision: 'now' },
    ],
    event,
  );
  expect(without(event)).toMatchObject({
    revertible: false,
    because: "It did more than record facts (keep), which an edit can't take back.",
  });
  const makes = newEvent();
  newCar(store, robin, 'moth', facts({}), makes);
  expect(without(makes)).toMatchObject({
    revertible: false,
    because: "It did more than record facts (choose car, make car), which an edit can't take back.",
  });
});

test('a car that is gone, and a car of somebody else', () => {
  const event = newEvent();
  record(store, robin, turnip, { mass: 1250 }, event);
  expect(without(event, sam)).toEqual({ revertible: false, because: 'The car that it changed is not there any more.', cars: [] });
  change(store, robin, [{ change: 'forget car', car: turnip }]);
  expect(without(event)).toEqual({ revertible: false, because: 'The car that it changed is not there any more.', cars: [] });
});

test('the edited line is worked out without the change, and its record is one revision that reverts and reapplies', () => {
  const event = newEvent();
  record(store, robin, turnip, { mass: 1250, wheelbase: 2.6 }, event);
  const { cars } = without(event);
  const laid = garageWithout(mine(), cars);
  expect(laid.chosen?.head.facts).toEqual(facts({ mass: 1200, wheelbase: 2.5 }));
  expect(laid.mine[0]?.head.id).toBe(headOf(store, robin, turnip));
  expect(laid.revision(headOf(store, robin, turnip))?.facts).toEqual(facts({ mass: 1200, wheelbase: 2.5 }));
  const head = laid.mine[0]!.head;
  const edited: Change = {
    change: 'record',
    car: turnip,
    head: head.id,
    facts: new Map([...head.facts, ...facts({ mass: 1240 })]),
    why: 'set weight 1240',
    measuredIn: head.measuredIn,
  };
  const edit = newEvent();
  change(store, robin, withReversals([edited], cars, 'edited'), edit);
  expect(mine().mine[0]?.head.facts).toEqual(facts({ mass: 1240, wheelbase: 2.5 }));
  expect(
    mine()
      .history(turnip, 9)
      .map((one) => one.why),
  ).toEqual(['set weight 1240', 'set it', 'car turnip']);
  // The edit is now what stands, and can be edited again.
  expect(without(edit)).toMatchObject({ revertible: true });
  expect(without(event)).toMatchObject({ revertible: false });
});

test('a line and its edit are taken back together, and what others did between them stays', () => {
  const [line, edit] = [newEvent(), newEvent()];
  record(store, robin, turnip, { mass: 1250, wheelbase: 2.6 }, line);
  record(store, robin, turnip, { 'front.spring.rate': 70000 });
  // The edit gives the wheelbase back, and another weight.
  record(store, robin, turnip, { mass: 1240, wheelbase: 2.5 }, edit);
  record(store, robin, turnip, { wheelbase: 2.55 });
  expect(without([line, edit])).toMatchObject({
    revertible: true,
    cars: [{ touched: ['mass'], facts: facts({ mass: 1200, wheelbase: 2.55, 'front.spring.rate': 70000 }) }],
  });
  record(store, robin, turnip, { mass: 1111 });
  expect(without([line, edit]).revertible).toBe(false);
});

test('edited into a question, the change is only taken back', () => {
  const event = newEvent();
  record(store, robin, turnip, { mass: 1250 }, event);
  const { cars } = without(event);
  change(store, robin, withReversals([], cars, 'edited: what is the weight'));
  expect(mine().mine[0]?.head).toMatchObject({ why: 'edited: what is the weight', facts: facts({ mass: 1200, wheelbase: 2.5 }) });
  expect(withReversals([{ change: 'forget car', car: turnip }], cars, 'x')).toEqual([{ change: 'forget car', car: turnip }]);
});

test('other cars and other members are as they are', () => {
  const event = newEvent();
  const moth = newCar(store, sam, 'moth');
  change(store, sam, [{ change: 'share', car: moth, room: paddock }]);
  record(store, robin, turnip, { mass: 1250 }, event);
  const garage = mine();
  const laid = garageWithout(garage, without(event).cars);
  expect(laid.others).toBe(garage.others);
  expect(laid.members).toBe(garage.members);
  expect(laid.revision(headOf(store, sam, moth))).toEqual(garage.revision(headOf(store, sam, moth)));
  expect(laid.history(turnip, 9)).toEqual(garage.history(turnip, 9));
  expect(laid.setups(turnip)).toEqual([]);
});

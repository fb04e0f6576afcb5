/** A guess that cannot be told itself says what to tell instead; nothing else is named as what an answer rests on. */
import { describe, expect, it } from 'vitest';
import { canBeNamed, canBeTold, halfWidth } from '../../core/catalog.js';
import { measureNext } from '../../core/doubt.js';
import { evaluate, pathAt, placesOf } from '../../core/engine.js';
import { catalog } from '../../core/stubaxle.js';
import { factsOf } from './ride/ask.js';
import { facts } from './small.js';

const guessed = catalog.entries.filter((entry) => entry.ways.some(({ within }) => within !== undefined && halfWidth(1, within) > 0));
const untellable = guessed.filter((entry) => !canBeTold(entry));

describe('a guess that cannot be told itself', () => {
  it('says in words what is not known, and names something at the same place that can be told', () => {
    expect(untellable.length).toBeGreaterThan(0);
    for (const { path, scope, asks } of untellable) {
      expect(asks?.words, path).toMatch(/^(whether|which|how|what) [a-z]/);
      expect(canBeTold(asks!.tell), path).toBe(true);
      expect(asks!.tell.measure, path).toBeTruthy();
      if (asks!.as !== undefined) expect(placesOf(asks!.tell.scope), path).toEqual(placesOf(scope));
    }
  });
  it('is gone where what it asks for was told as it was guessed, and the number stays', () => {
    const settled = untellable.filter(({ asks }) => asks?.as !== undefined);
    expect(settled.length).toBeGreaterThan(0);
    for (const entry of settled) {
      for (const place of placesOf(entry.scope)) {
        const path = pathAt(place, entry);
        expect(evaluate(catalog, { facts: facts({}) }).within(path), path).toBeGreaterThan(0);
        const told = evaluate(catalog, { facts: factsOf({ [pathAt(place, entry.asks!.tell)]: entry.asks!.as as string | number }) });
        expect([told.number(path), told.within(path)], path).toEqual([evaluate(catalog, { facts: facts({}) }).number(path), 0]);
      }
    }
  });
  it('is the only one that may be named', () => {
    const steps = catalog.entries.filter((entry) => !canBeTold(entry) && entry.asks === undefined);
    expect(steps.length).toBeGreaterThan(0);
    for (const entry of catalog.entries) expect(canBeNamed(entry), entry.path).toBe(canBeTold(entry) || untellable.includes(entry));
  });
  it('lessens a doubt by being told', () => {
    const it_ = evaluate(catalog, { facts: facts({ mass: 1100, 'front.spring.rate': 60_000, 'front.spring.ratio': 0.9 }) });
    const next = measureNext(it_, 'totalMass').find(({ paths }) => paths.includes('driver.unsaid'));
    expect(next?.now).toBeGreaterThan(70);
    expect(next?.after).toBeLessThan(70);
    const rubber = measureNext(it_, 'front.wheelRate').find(({ paths }) => paths.includes('front.isolator.untold'));
    expect(rubber!.after).toBeLessThan(0.5 * rubber!.now);
  });
});

/** A roadster of an invented club, as a member would tell it. */
import type { Told } from '../ride/ask.js';

const degree = Math.PI / 180;
export const pickle: Told = {
  mass: 1090,
  frontShare: 0.525,
  wheelbase: 2.265,
  'front.track': 1.41,
  'rear.track': 1.43,
  'cg.height': 0.47,
  'front.spring.rate': 60_000,
  'rear.spring.rate': 45_000,
  'front.spring.ratio': 0.7,
  'rear.spring.ratio': 0.75,
  'front.bar.diameter': 0.022,
  'rear.bar.diameter': 0.014,
  'front.tire.size': '205/50R15',
  'rear.tire.size': '205/50R15',
  'lf.camber': -2 * degree,
  'rf.camber': -2 * degree,
  'lr.camber': -1 * degree,
  'rr.camber': -1 * degree,
};

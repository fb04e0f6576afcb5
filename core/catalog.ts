/** The kinds of catalog entry, the ways in which they are worked out, and how one entry reads another. */
export { type Asks, canBeNamed, canBeTold, type Entry, isEntry, isInput, isNumeric, isWorkedOut, type Made } from './catalog/entry.js';
export {
  type ChoiceSpec,
  type CurveSpec,
  choice,
  curve,
  type DesignationSpec,
  designation,
  structure,
  thisAxle,
  thisSide,
} from './catalog/kinds.js';
export {
  type AnyNeeds,
  asMeasured,
  firstOf,
  front,
  given,
  higher,
  ifTold,
  left,
  maybe,
  type Need,
  rear,
  refine,
  right,
  type Turn,
} from './catalog/needs.js';
export { type FigureSpec, figure, type QuantitySpec, quantity, type Rule, type Twins, wheels } from './catalog/quantity.js';
export { groupsSaid } from './catalog/saying.js';
export { inPractice, standing, type Typical, type TypicalOverAll } from './catalog/typical.js';
export {
  type Around,
  type Curve,
  type Evidence,
  halfWidth,
  isCurve,
  isRefusal,
  type Refusal,
  refuse,
  type Scope,
  type Told,
  type Value,
  type Within,
} from './catalog/values.js';
export { type AnyWay, carry, inverse, type Sort, type Way, type WaySpec, way } from './catalog/ways.js';

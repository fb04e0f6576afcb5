/** The engine: compiles the catalogs once, and evaluates cars. */
export type { Assumed, AssumedKind } from './engine/assumed.js';
export { type Catalog, compile, type Node, type NodeWay } from './engine/compile.js';
export type { Doubt } from './engine/errors.js';
export { type Contradicted, catalogFor, type Evaluation, evaluate, type Share, type Status, withoutFacts } from './engine/evaluate.js';
export type { Overridden } from './engine/overridden.js';
export { nameAt, nameAtAll, pathAt, placesOf } from './engine/places.js';
export { catalogTrying, type Probe, probe } from './engine/probe.js';
export type { Situation } from './engine/state.js';
export { telling } from './engine/telling.js';
export { largestFirst, widthOf } from './engine/width.js';

/**
 * The engine's table of contents, in the order in which data flows:
 * design → geometry → emission → plant → transport → field → coat.
 *
 * What reads a coat stands behind doors of its own, so that a page loads it when it is asked for: gas/gasCoat.ts,
 * vacuum/pumpDown.ts, film/filmReport.ts, explain/explainCoat.ts.
 */

// design: the file, its units and its faults
export { designJsonSchema, type DesignFile } from './design/designSchema.ts';
export { namedFiles, type NamedFiles } from './design/checkDesign.ts';
export { formatProblem, type Problem } from './design/problem.ts';
export { formatQuantity, inUnit, knownUnits, parseQuantity, type DimensionName } from './design/quantity.ts';

// plant: the described things in their places
export { openPlant, openPlantFile, type OpenedPlant } from './plant/openPlant.ts';
export type { Filament, Plant, Witness } from './plant/plant.ts';

// transport: where the vapour goes
export type { Control, Transport } from './transport/transport.ts';

// coat: what it leaves on the mirror
export { createEvaluator, DEFAULT_POINTS, type EvaluateOptions, type Evaluator } from './coat/evaluateCoat.ts';
export type { Coat } from './coat/coat.ts';
export { createProbe, type Probe, type ProbeReading } from './coat/probe.ts';
export type { Estimate, Statistics } from './coat/statistics.ts';
export { verdictOf, type Verdict } from './coat/verdict.ts';

/** What a chart with logarithmic axes shows. */

export interface LogAxis {
  /** what runs along it, such as "Time" */
  readonly label: string;
  /** the unit of all numbers along it; empty for a pure number */
  readonly unit: string;
  /** logarithmic unless it says otherwise */
  readonly scale?: 'log' | 'linear';
  /** lowest and highest value shown; around the data unless given */
  readonly range?: readonly [low: number, high: number];
}

/** A line. It is told from others by its dashes and by its name at its end; colour only helps. */
export interface LogSeries {
  readonly label: string;
  /** strictly rising, in the unit of the x axis */
  readonly x: ArrayLike<number>;
  /** in the unit of the y axis; what a logarithmic axis cannot show, and NaN, leaves a gap */
  readonly y: ArrayLike<number>;
  /** lengths of dash and gap, CSS pixels; by its place in the list unless given, the first is full */
  readonly dash?: readonly number[];
}

/** Measured readings, drawn as open signs over the lines. */
export interface LogPoints {
  readonly label: string;
  /** strictly rising */
  readonly x: ArrayLike<number>;
  readonly y: ArrayLike<number>;
  readonly sign?: 'circle' | 'square' | 'diamond';
}

/** A value that matters, as a thin line across the chart with its name. */
export interface LogThreshold {
  readonly axis: 'x' | 'y';
  readonly value: number;
  readonly label: string;
}

export interface LogChartData {
  readonly xAxis: LogAxis;
  readonly yAxis: LogAxis;
  readonly series: readonly LogSeries[];
  readonly points?: readonly LogPoints[];
  readonly thresholds?: readonly LogThreshold[];
}

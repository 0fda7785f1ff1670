/** What the picture shows at this moment, gathered from the stores; its parts follow it without React. */
import { create } from 'zustand';
import type { Coat, DesignFile, Plant, ProbeReading } from '../../engine/index.ts';
import { mapFieldOf, type MapField } from '../format/mapField.ts';
import { scaleOf, type SharedRange } from '../format/mapScale.ts';
import { useDesign } from '../state/designStore.ts';
import { useMapView, type MappedQuantity, type MapView } from '../state/mapView.ts';
import { usePointed } from '../state/pointed.ts';
import { useProbe } from '../state/probeStore.ts';
import { useResult } from '../state/resultStore.ts';
import { useSelection, type Part } from '../state/selection.ts';
import type { Colors } from '../state/useColors.ts';
import type { ColorScale } from './colorScale.ts';
import { useSceneOptions, type SceneOptions } from './sceneOptions.ts';

export interface Picture {
  /** as designed now; ahead of the coat while it is worked out */
  readonly plant: Plant;
  readonly file: DesignFile;
  readonly coat: Coat;
  /** the quantity that is drawn: thickness until the coat has the one that was asked for */
  readonly quantity: MappedQuantity;
  readonly field: MapField;
  readonly scale: ColorScale;
  readonly selected: readonly Part[];
  /** pointed at in a list or a chart, without being selected */
  readonly pointed: Part | null;
  readonly options: SceneOptions;
  readonly reading: ProbeReading | null;
  readonly colors: Colors;
}

export const usePicture = create<{ readonly picture: Picture | null }>(() => ({ picture: null }));

interface Painted {
  readonly coat: Coat;
  readonly view: MapView;
  readonly shared: SharedRange | undefined;
  readonly quantity: MappedQuantity;
  readonly field: MapField;
  readonly scale: ColorScale;
}

/** Field and scale of a coat; the last ones if nothing about them has changed. */
function paint(last: Painted | null, coat: Coat, variants: SharedRange | undefined): Painted {
  const view = useMapView.getState();
  const shared = view.range.mode === 'shared' ? variants : undefined;
  if (last?.coat === coat && last.view === view && last.shared === shared) return last;
  const wanted = mapFieldOf(coat, view.quantity);
  const quantity = wanted ? view.quantity : 'thickness';
  const field = wanted ?? mapFieldOf(coat, 'thickness');
  if (!field) throw new Error('expected every coat to have a thickness');
  return { coat, view, shared, quantity, field, scale: scaleOf(field.values, { ...view, quantity }, shared) };
}

/** What the page gives to the picture beside the stores. */
interface Setting {
  readonly colors: Colors | null;
  readonly shared: SharedRange | undefined;
}

const useSetting = create<Setting>(() => ({ colors: null, shared: undefined }));

/** Changes the theme's colours, or the range that all variants share. */
export function setPicture(colors: Colors, shared: SharedRange | undefined): void {
  useSetting.setState({ colors, shared });
}

/** Keeps the picture up to date; returns how to stop. */
export function followStores(): () => void {
  let painted: Painted | null = null;
  const compose = (): void => {
    const { coat } = useResult.getState();
    const { colors, shared } = useSetting.getState();
    if (!coat || !colors) return;
    const options = useSceneOptions.getState();
    painted = paint(painted, coat, shared);
    const { plant, file } = useDesign.getState().current;
    const { quantity, field, scale } = painted;
    const { parts: selected } = useSelection.getState();
    const { reading } = useProbe.getState();
    const { part: pointed } = usePointed.getState();
    usePicture.setState({
      picture: { plant, file, coat, quantity, field, scale, selected, pointed, options, reading, colors },
    });
  };
  compose();
  const stores = [useSetting, useDesign, useResult, useSelection, usePointed, useSceneOptions, useMapView, useProbe];
  const stops = stores.map((store) => store.subscribe(compose));
  return () => stops.forEach((stop) => stop());
}

/** The named views of the tank, their keys and their buttons. */
import { create } from 'zustand';

/** `free` is how the user last turned the tank by hand; `first` is where that begins. */
export type ViewName = 'front' | 'side' | 'mirror' | 'free';

export const VIEWS: readonly { readonly name: ViewName; readonly label: string; readonly key: string }[] = [
  { name: 'front', label: 'Front', key: '1' },
  { name: 'side', label: 'Side', key: '2' },
  { name: 'mirror', label: 'From the mirror', key: '3' },
  { name: 'free', label: 'Free', key: '4' },
];

/** The view in use, and what to ask of the camera; null before there is one. */
export interface ViewState {
  readonly view: ViewName;
  readonly actions: ViewActions | null;
}

/** What buttons and keys can ask of the camera. */
export interface ViewActions {
  readonly show: (view: ViewName) => void;
  /** back to the view in which the page opens */
  readonly reset: () => void;
  /** factor on the distance */
  readonly zoom: (factor: number) => void;
  /** rad around the tank's axis, and toward it */
  readonly turn: (azimuth: number, polar: number) => void;
}

export const useView = create<ViewState>(() => ({ view: 'free', actions: null }));

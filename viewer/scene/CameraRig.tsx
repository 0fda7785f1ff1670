/** Orbit, zoom and the named views, by pointer, by keyboard and by button. */
import { useFrame, useThree } from '@react-three/fiber';
import { useEffect, useRef } from 'react';
import { PerspectiveCamera, Spherical, Vector3 } from 'three';
import { OrbitControls } from 'three/addons/controls/OrbitControls.js';
import { frame, type Framing } from './framing.ts';
import { usePicture } from './picture.ts';
import { useView, type ViewName } from './views.ts';

const ALMOST_UP = 1e-3;
/** How long the camera takes from one view to another, ms. */
const MOVE = 280;

function turnAround(camera: PerspectiveCamera, target: Vector3, azimuth: number, polar: number): void {
  // Spherical measures from +y; the tank's axis is z
  const offset = camera.position.clone().sub(target);
  const around = new Spherical().setFromVector3(new Vector3(offset.x, offset.z, -offset.y));
  around.theta += azimuth;
  around.phi = Math.min(Math.PI - ALMOST_UP, Math.max(ALMOST_UP, around.phi + polar));
  const turned = new Vector3().setFromSpherical(around);
  camera.position.copy(target).add(new Vector3(turned.x, -turned.z, turned.y));
}

/** A move of the camera under way. */
interface Move {
  readonly from: Framing;
  readonly to: Framing;
  readonly start: number;
}

const prefersStillness = (): boolean => window.matchMedia('(prefers-reduced-motion: reduce)').matches;
const eased = (t: number): number => t * t * (3 - 2 * t);

function placeBetween({ from, to }: Move, share: number, camera: PerspectiveCamera, target: Vector3): void {
  target.lerpVectors(from.target, to.target, share);
  const [a, b] = [from.position.clone().sub(from.target), to.position.clone().sub(to.target)];
  const distance = a.length() * (1 - share) + b.length() * share;
  camera.position.copy(target).addScaledVector(a.lerp(b, share).normalize(), distance);
}

export function CameraRig() {
  const camera = useThree((state) => state.camera) as PerspectiveCamera;
  const element = useThree((state) => state.gl.domElement);
  const invalidate = useThree((state) => state.invalidate);
  const width = useThree((state) => state.size.width);
  const height = useThree((state) => state.size.height);
  const controls = useRef<OrbitControls>(null);
  const move = useRef<Move>(null);
  /** where the user left the camera in the free view; null if it still is where it began */
  const own = useRef<Framing>(null);

  const settle = (framing: Framing): void => {
    camera.position.copy(framing.position);
    controls.current?.target.copy(framing.target);
    controls.current?.update();
    invalidate();
  };
  const placeOf = (view: ViewName): Framing | null => {
    const plant = usePicture.getState().picture?.plant;
    if (!plant) return null;
    return view === 'free' && own.current ? own.current : frame(plant, camera, view);
  };
  const goTo = (view: ViewName, isSmooth: boolean): void => {
    const to = placeOf(view);
    const orbit = controls.current;
    if (!to || !orbit) return;
    useView.setState({ view });
    if (!isSmooth || prefersStillness()) return settle(to);
    const from = { position: camera.position.clone(), target: orbit.target.clone() };
    move.current = { from, to, start: performance.now() };
    invalidate();
  };
  const latest = useRef(goTo);
  latest.current = goTo;

  useEffect(() => {
    const orbit = new OrbitControls(camera, element);
    controls.current = orbit;
    const keep = (): void => {
      own.current = { position: camera.position.clone(), target: orbit.target.clone() };
      useView.setState({ view: 'free' });
    };
    let isHeld = false;
    orbit.addEventListener('start', () => {
      isHeld = true;
      move.current = null;
    });
    orbit.addEventListener('end', () => void (isHeld = false));
    orbit.addEventListener('change', () => {
      if (isHeld) keep();
      invalidate();
    });
    const byHand = (change: () => void): void => {
      move.current = null;
      change();
      orbit.update();
      keep();
      invalidate();
    };
    useView.setState({
      actions: {
        show: (view) => latest.current(view, true),
        reset: () => {
          own.current = null;
          latest.current('free', true);
        },
        zoom: (factor) => byHand(() => camera.position.sub(orbit.target).multiplyScalar(factor).add(orbit.target)),
        turn: (azimuth, polar) => byHand(() => turnAround(camera, orbit.target, azimuth, polar)),
      },
    });
    return () => {
      orbit.dispose();
      useView.setState({ actions: null });
    };
  }, [camera, element, invalidate]);

  useFrame(() => {
    const under = move.current;
    const orbit = controls.current;
    if (!under || !orbit) return;
    const share = Math.min(1, (performance.now() - under.start) / MOVE);
    placeBetween(under, eased(share), camera, orbit.target);
    if (share === 1) move.current = null;
    orbit.update();
    invalidate();
  });

  // another tank is another picture; another window size only reframes a view that nobody has turned
  const tankKey = usePicture(({ picture }) => {
    const { radius, lowZ, highZ, centerX } = picture?.plant.tank ?? {};
    return [radius, lowZ, highZ, centerX].join(' ');
  });
  useEffect(() => {
    const { radius = 1 } = usePicture.getState().picture?.plant.tank ?? {};
    if (controls.current) {
      controls.current.minDistance = 0.3 * radius;
      controls.current.maxDistance = 15 * radius;
    }
    camera.near = 0.02 * radius;
    camera.far = 60 * radius;
    camera.updateProjectionMatrix();
    own.current = null;
    latest.current('free', false);
  }, [camera, tankKey]);
  useEffect(() => {
    const { view } = useView.getState();
    if (view !== 'free' || !own.current) latest.current(view, false);
  }, [width, height]);
  return null;
}

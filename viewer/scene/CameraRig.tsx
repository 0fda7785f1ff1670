/** Orbit, zoom and the named views, by pointer, by keyboard and by button. */
import { useThree } from '@react-three/fiber';
import { useEffect, useRef } from 'react';
import { PerspectiveCamera, Spherical, Vector3 } from 'three';
import { OrbitControls } from 'three/addons/controls/OrbitControls.js';
import type { Plant } from '../../engine/index.ts';
import { frame } from './framing.ts';

/** What buttons and keys can ask of the camera. */
export interface ViewActions {
  readonly show: (view: 'first' | 'face-on') => void;
  /** factor on the distance */
  readonly zoom: (factor: number) => void;
  /** rad around the tank's axis, and toward it */
  readonly turn: (azimuth: number, polar: number) => void;
}

const ALMOST_UP = 1e-3;

function turnAround(camera: PerspectiveCamera, target: Vector3, azimuth: number, polar: number): void {
  // Spherical measures from +y; the tank's axis is z
  const offset = camera.position.clone().sub(target);
  const around = new Spherical().setFromVector3(new Vector3(offset.x, offset.z, -offset.y));
  around.theta += azimuth;
  around.phi = Math.min(Math.PI - ALMOST_UP, Math.max(ALMOST_UP, around.phi + polar));
  const turned = new Vector3().setFromSpherical(around);
  camera.position.copy(target).add(new Vector3(turned.x, -turned.z, turned.y));
}

interface CameraRigProps {
  readonly plant: Plant;
  readonly onReady: (actions: ViewActions) => void;
}

export function CameraRig({ plant, onReady }: CameraRigProps) {
  const camera = useThree((state) => state.camera) as PerspectiveCamera;
  const element = useThree((state) => state.gl.domElement);
  const invalidate = useThree((state) => state.invalidate);
  const width = useThree((state) => state.size.width);
  const height = useThree((state) => state.size.height);
  const latestPlant = useRef(plant);
  const controls = useRef<OrbitControls>(null);
  const isTouched = useRef(false);
  const show = useRef((_view: 'first' | 'face-on'): void => undefined);
  latestPlant.current = plant;

  useEffect(() => {
    const orbit = new OrbitControls(camera, element);
    controls.current = orbit;
    const touched = (): void => void (isTouched.current = true);
    const changed = (): void => invalidate();
    orbit.addEventListener('start', touched);
    orbit.addEventListener('change', changed);
    show.current = (view) => {
      const { position, target } = frame(latestPlant.current, camera, view);
      camera.position.copy(position);
      orbit.target.copy(target);
      orbit.update();
      isTouched.current = view !== 'first';
      invalidate();
    };
    const move = (change: () => void): void => {
      change();
      isTouched.current = true;
      orbit.update();
      invalidate();
    };
    onReady({
      show: (view) => show.current(view),
      zoom: (factor) => move(() => camera.position.sub(orbit.target).multiplyScalar(factor).add(orbit.target)),
      turn: (azimuth, polar) => move(() => turnAround(camera, orbit.target, azimuth, polar)),
    });
    return () => orbit.dispose();
  }, [camera, element, invalidate, onReady]);

  const { radius, lowZ, highZ, centerX } = plant.tank;
  useEffect(() => {
    if (controls.current) {
      controls.current.minDistance = 0.3 * radius;
      controls.current.maxDistance = 15 * radius;
    }
    camera.near = 0.02 * radius;
    camera.far = 60 * radius;
    camera.updateProjectionMatrix();
  }, [camera, radius]);

  // another tank is another picture; another window size only reframes a view that nobody has turned
  useEffect(() => show.current('first'), [radius, lowZ, highZ, centerX]);
  useEffect(() => {
    if (!isTouched.current) show.current('first');
  }, [width, height]);
  return null;
}

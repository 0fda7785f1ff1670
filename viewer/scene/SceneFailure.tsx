/** Stands in for the picture where the browser cannot draw it. */
import { Component, type ReactNode } from 'react';

export class SceneFailure extends Component<{ readonly children: ReactNode }, { readonly hasFailed: boolean }> {
  override state = { hasFailed: false };

  static getDerivedStateFromError() {
    return { hasFailed: true };
  }

  override render() {
    if (!this.state.hasFailed) return this.props.children;
    return (
      <p className="scene-failure">
        This browser cannot draw in 3D: it needs WebGL 2, which may be switched off. The numbers and the radial profile
        do not depend on it.
      </p>
    );
  }
}

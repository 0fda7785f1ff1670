/** Light that a rough surface scatters out of the image. */

/**
 * Total integrated scatter: the share of the reflected light that leaves the specular beam.
 *
 *     TIS = 1 − exp(−(4π σ cos θ / λ)²)
 *
 * Assumes: heights with a Gaussian distribution, wider than the wavelength along the surface. Valid for:
 * σ ≪ λ. The roughness counts only between the spatial frequencies 0 and 1/λ.
 *
 * @param roughness [m] rms height σ
 * @param wavelength [m]
 * @param cosIncidence [1]
 * @see H. E. Bennett, J. O. Porteus, JOSA 51 (1961) 123
 */
export function totalScatter(roughness: number, wavelength: number, cosIncidence = 1): number {
  return -Math.expm1(-(((4 * Math.PI * roughness * cosIncidence) / wavelength) ** 2));
}

/**
 * The rms roughness that scatters a given share; undoes totalScatter.
 *
 * @param scatter [1] from 0 to below 1
 * @returns [m]
 */
export function roughnessOf(scatter: number, wavelength: number, cosIncidence = 1): number {
  return (wavelength * Math.sqrt(-Math.log1p(-scatter))) / (4 * Math.PI * cosIncidence);
}

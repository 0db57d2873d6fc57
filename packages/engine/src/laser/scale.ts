/**
 * Wavelength in nm as the tables want it, freed of the last binary digits so that 1400 nm read from text meets the edge at 1400.
 * @param wavelength [m]
 * @returns [nm], twelve figures
 */
export const nanometres = (wavelength: number): number => tidy(wavelength * 1e9);

/** A number to twelve figures: edges of the tables are met exactly by values read from text. */
export const tidy = (value: number): number => Number(value.toPrecision(12));

export const milliradians = (angle: number): number => tidy(angle * 1e3);

export type WavelengthBand = 'ultraviolet' | 'visible' | 'infrared';

/** Band for exposure durations: ultraviolet below 400 nm, visible 400 to 700 nm, infrared beyond. The retina is at risk up to 1400 nm. */
export function wavelengthBand(wavelength: number): WavelengthBand {
  const nm = nanometres(wavelength);
  if (nm < 400) return 'ultraviolet';
  return nm < 700 ? 'visible' : 'infrared';
}

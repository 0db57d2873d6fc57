/** Cautions that stand with results of this discipline wherever they are shown. */
export const airCautions = {
  forecast:
    'A computed class is a forecast, never a certificate: only a measurement with a calibrated counter under ISO 14644-1 supports a class statement.',
  overPressure:
    'Over-pressure drives fume, gas and laser-generated particles outwards. Where the work gives off any of these, extraction designed by a competent person comes first.',
  overhead:
    'Fan filter units hang over people: fixings, electrical supply, and sprinkler and detector coverage follow local codes and the appointed persons.',
  blackout: 'A figure of light-tightness is no laser-safety figure: barrier ratings are another subject.',
  emergencyLight: 'Emergency lighting follows the local code; it is not part of this figure.',
  noiseExposure: 'Duties on noise exposure follow local law and its appointed persons.',
} as const;

/** Cautions of frames that stand, hang or carry. Source: common practice, from the handbook of structures, section 0. */
export const frameCautions = {
  engineer:
    'A structure overhead can kill. This is a planning aid, not a stamped calculation: a qualified structural engineer decides wherever a frame carries loads over people, is taller than a person, hangs from a building or can be climbed on. Local codes come first.',
  anchors:
    'Anchors into ceiling, wall or floor are chosen, installed and tested by qualified persons for the actual base material; the building owner confirms that it may carry the load. A suspended-ceiling grid is never a support.',
  joints: 'Joint capacities are the supplier’s data for the stated torque. Joints without data are not checked.',
  climbing: 'Nobody climbs on the frame, leans a ladder on it or lifts from it.',
  casters:
    'A frame on casters is moved empty, slowly, by two people, with the brakes on at rest. After a move the laser safety officer releases the barrier again.',
  bonding: 'Bonding of the metal frame and cables on it belong to a licensed electrician.',
} as const;

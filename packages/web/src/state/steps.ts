/** The eight steps of the way. */
export const stepNames = ['survey', 'needs', 'layout', 'checks', 'parts', 'sheets', 'proving', 'changes'] as const;
export type StepName = (typeof stepNames)[number];

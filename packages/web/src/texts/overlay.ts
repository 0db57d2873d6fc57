export const overlayTexts = {
  title: 'Lay over the plan',
  none: 'Plain plan',
  legend: (title: string) => `What ${title} shows`,
  limits: 'Not in it:',
  lay: (title: string) => `Lay over: ${title}`,
  drawing: 'is being drawn',
  group: 'Laid over the plan',
  key: (key: string) => `Key ${key}`,
  count: (title: string, n: number) => `${title}: ${n === 1 ? '1 mark' : `${n} marks`} on the plan.`,
} as const;

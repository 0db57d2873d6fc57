/** Which measurement: `processes` (commands and growth), `edits` (small edits of a brief), `browser` (the workbench in use). */
const which = process.argv[2] ?? 'processes';
if (which === 'browser') await import('./browser.js');
else if (which === 'edits') await import('./edits.js');
else await import('./processes.js');

export {};

import type { Design } from '../design/types.js';
import { type FieldChange, fieldChanges } from './fields.js';
import { type Fact, fact } from './thing.js';

/** What stands in title blocks: who, for whom, under which rules. */
const told = ({ project, rules }: Design): Fact[] => [
  fact('name', project.name),
  fact('number', project.number),
  fact('owner', project.owner),
  fact('author', project.author),
  fact('contact', project.contact),
  fact('laser safety officer', project.laserSafetyOfficer),
  fact('invented data', project.invented),
  fact('units', project.units),
  fact('site rules', rules.title),
];

export const compareProject = (before: Design, after: Design): FieldChange[] => fieldChanges(told(before), told(after));

/** Letters, digits and hyphens of the project's name, so that every file system takes it; JSON stays JSON. */
export function briefName(project: string, text: string): string {
  const stem = project
    .toLowerCase()
    .normalize('NFKD')
    .replace(/\p{Mark}/gu, '')
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 60);
  return `${stem || 'brief'}.${text.trimStart().startsWith('{') ? 'json' : 'yaml'}`;
}

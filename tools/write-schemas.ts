import { mkdirSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { fileSchemas, schemaText } from './schemas.js';

const folder = fileURLToPath(new URL('../schemas/', import.meta.url));
mkdirSync(folder, { recursive: true });
for (const [name, schema] of Object.entries(fileSchemas())) writeFileSync(`${folder}${name}`, schemaText(schema));

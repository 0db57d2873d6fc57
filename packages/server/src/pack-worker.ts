import { parentPort, workerData } from 'node:worker_threads';
import { designFrom } from '@cloche/engine';
import { makePack } from '@cloche/pack';
import type { PackFonts, PackJob, PackNews } from './pack-job.js';
import type { Stock } from './stock.js';

const fonts = workerData as PackFonts;
const tell = (news: PackNews): void => parentPort?.postMessage(news);

/** The stock of the last pack: the engine reads the files of one stock once, and knows it by being the same. */
let held: Stock | undefined;

function sameStock(stock: Stock): Stock {
  if (held?.key !== stock.key) held = stock;
  return held;
}

/** Makes one pack; runs in a thread of its own, so that the server answers meanwhile and the work can be stopped at any point. */
async function make({ brief, stock, issued, file }: PackJob): Promise<PackNews> {
  const { catalogueFiles, rulesFiles: ruleTexts } = sameStock(stock);
  const made = designFrom({ briefText: brief, catalogueFiles, ruleTexts });
  if (!made.ok) return { news: 'refused', problems: made.problems };
  const { design, findings, catalogue, rules, revision } = made.value;
  const files = await makePack(
    { design, findings, catalogue, rules, issued, fonts, revision: { name: 'draft', hash: revision } },
    {
      ...(file === undefined ? {} : { only: [file] }),
      onProgress: (done, share) => tell({ news: 'progress', done, share }),
    },
  );
  return { news: 'made', project: design.project.name, files };
}

parentPort?.on('message', (job: PackJob) => {
  make(job)
    .catch((error: unknown): PackNews => ({ news: 'fault', message: String(error) }))
    .then(tell);
});

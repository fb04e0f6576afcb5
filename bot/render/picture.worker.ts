/** The thread that draws: vega and the rasteriser are loaded here and nowhere else, and are gone when it ends. */
import { createRequire } from 'node:module';
import { parentPort } from 'node:worker_threads';
import { Resvg } from '@resvg/resvg-js';
import { parse, View } from 'vega';
import { chartHeight, chartSpec, chartWidth, fontFamily } from './chart.js';
import { chartSchema } from './json.js';

const font = createRequire(import.meta.url);
const fontFiles = ['DejaVuSans.ttf', 'DejaVuSans-Bold.ttf'].map((name) => font.resolve(`dejavu-fonts-ttf/ttf/${name}`));

async function draw(message: unknown): Promise<Uint8Array> {
  const view = new View(parse(chartSpec(chartSchema.parse(message))), { renderer: 'none' });
  const svg = await view.toSVG();
  view.finalize();
  const image = new Resvg(svg, {
    // A fixed font: the picture is the same on every machine, and none is empty for want of one.
    font: { loadSystemFonts: false, fontFiles, defaultFontFamily: fontFamily },
    background: '#ffffff',
  }).render();
  if (image.width !== chartWidth || image.height !== chartHeight) throw new Error(`drawn ${image.width} by ${image.height}`);
  return image.asPng();
}

const port = parentPort;
if (port === null) throw new Error('this file runs as a thread');
port.on('message', (message: unknown) => {
  draw(message).then(
    (png) => port.postMessage(png),
    (error: unknown) => {
      // Thrown outside the promise, it ends the thread and reaches whoever asked.
      setImmediate(() => {
        throw error;
      });
    },
  );
});
port.postMessage('ready');

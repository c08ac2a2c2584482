// node run.mjs PROGRAM EXAMPLES AXE [PICTURES]: writes pages with PROGRAM and looks at them in a browser. Screenshots go to the folder PICTURES, where it is given.
import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { pathToFileURL } from 'node:url';

import { Browser } from './browser.mjs';
import * as looks from './looks.mjs';

const [program, examples, axe, pictures] = process.argv.slice(2);
const folder = mkdtempSync(join(tmpdir(), 'pages-'));
let failures = 0, checks = 0;
const hold = (what, complaints) => {
  ++checks;
  if (!complaints.length) return;
  ++failures;
  console.log(`FAILED ${what}`);
  for (const complaint of complaints.slice(0, 12)) console.log('  ' + complaint);
};

// ---- the pages
const write = (name, feed, ...more) => write_of(more.length ? 'compare' : 'run', name, feed, ...more);
const write_of = (verb, name, ...files) => {
  const page = join(folder, name + '.html'), json = join(folder, name + '.json');
  try {
    execFileSync(program, [verb, ...files, '--to', 'page=' + page, '--to', 'json=' + json, '--quiet'], { stdio: 'pipe' });
  } catch (error) {
    if (error.status !== 1) throw error;
  }
  return { name, url: pathToFileURL(page).href, document: JSON.parse(readFileSync(json, 'utf8')) };
};
const design = (name, text) => {
  const path = join(folder, name + '.feed');
  writeFileSync(path, text);
  return path;
};
const body = `source rig at desk : 100 W, 50 ohm
line coax from desk to feed : 26 m of RG-58, limit 150 V
load wires at feed : 61 - j142 ohm, radiates 94 %
plane antenna at feed
require swr at desk below 1.5
`;
const hostile = `</title></script><script>console.log('in')</script><img src=x onerror=console.log('in')>' \\"><b>`;
const pages = readdirSync(examples).filter((file) => file.endsWith('.feed')).sort().map((file) => write(basename(file, '.feed'), join(examples, file)));
pages.push(write('hostile', design('hostile', `design "${hostile}"\n${body}variant "${hostile}" {\n}\nvariant "${'long '.repeat(60)}" {\n}\nsweep 7 MHz to 7.2 MHz, 5 points\n`)));
pages.push(write('endless_title', design('endless_title', `design "${'W'.repeat(5000) + ' word'.repeat(1000)}"\n${body}sweep at [7.1 MHz]\n`)));
pages.push(write('long_sweep', design('long_sweep', `design "long"\n${body}sweep 7 MHz to 7.4 MHz, 1000 points\n`)));

pages.push(write('compared', join(examples, '01_l_network_by_hand.feed'), join(examples, '06_end_fed_wire.feed')));
pages.push(write_of('walk', 'walked', join(examples, '05_doublet_with_open_wire_line.feed')));
pages.push(write_of('weigh', 'weighed', join(examples, '02_tuner_at_rig_or_mast.feed')));
// One design held to what it was, and made worse; one with a hostile name and no baseline.
mkdirSync(join(folder, 'checked'));
const coax = (metres) => `design "${hostile}"\nset run = ${metres} m\n` + body.replace('26 m', 'run') + 'sweep at [7.1 MHz]\n';
design('checked/held', coax(10));
write_of('check', 'accepted', '--accept', join(folder, 'checked', 'held.feed'));
design('checked/held', coax(40));
design('checked/fresh', coax(10));
pages.push(write_of('check', 'checked_page', join(folder, 'checked')));

// ---- one page
const at = (document, pointer) => pointer.split('/').slice(1).reduce((value, step) => value[step.replace(/~1/g, '/').replace(/~0/g, '~')], document);

/// Looked at for accessibility in more than one size and light.
const thorough = new Set(['02_tuner_at_rig_or_mast', 'hostile', 'walked', 'checked_page']);

async function look(page, { name, url, document }) {
  await page.open(url, { width: 360 });
  // Light and dark differ in colours alone; letters are smallest where the page is narrow.
  for (const [width, scheme] of [[360, 'light'], [768, 'light'], [1280, 'light'], [360, 'dark'], ...(pictures ? [[768, 'dark'], [1280, 'dark']] : [])]) {
    const where = `${name}, ${width} wide, ${scheme}: `;
    await page.resize({ width, scheme });
    if (scheme === 'light') hold(where + 'nothing sticks out', await page.call(looks.outside));
    if (scheme === 'light') hold(where + 'no letters over others', await page.call(looks.overlaps));
    if (width === 360) hold(where + 'letters are legible', await page.call(looks.legible, 8.5));
    if (width === 360) hold(where + 'curves stand out', await page.call(looks.curves_stand_out));
    hold(where + 'no complaint, no request', page.complaints);
    if (pictures) writeFileSync(join(pictures, `${name}-${width}-${scheme}.png`), await page.picture());
    }
  for (const [width, scheme] of thorough.has(name) ? [[360, 'dark'], [1280, 'light'], [1280, 'dark']] : [[1280, 'light']]) {
    await page.open(url, { width, scheme });
    await page.run(axe_source);
    hold(`${name}, ${width} wide, ${scheme}: accessible`, await page.call(looks.axe_violations));
  }
  const values = await page.call(looks.all_values);
  hold(name + ': numbers', values.length < 20 ? ['there are few'] : values.filter(([pointer, value]) => Number(value) !== at(document, pointer)).map(([pointer]) => pointer));
  await print(page, name, url);
}

async function print(page, name, url) {
  await page.open(url, { width: 720, media: 'print', scheme: 'dark' });
  const shown = await page.call(() => ['nav', '#controls', '#save-line'].filter((selector) => document.querySelector(selector)?.getClientRects().length));
  hold(name + ': no controls on paper', shown);
  hold(name + ': paper is white', await page.call(() => (getComputedStyle(document.body).backgroundColor === 'rgb(255, 255, 255)' ? [] : ['it is not'])));
  hold(name + ': legible on paper', await page.call(looks.legible, 5));
  hold(name + ': nothing sticks out of the paper', (await page.call(looks.outside)));
  const { data } = await page.send('Page.printToPDF', { printBackground: true });
  hold(name + ': prints', Buffer.from(data, 'base64').subarray(0, 5).toString() === '%PDF-' ? [] : ['no PDF']);
}

async function keyboard(page, { name, url }) {
  await page.open(url, { width: 1280 });
  const wanted = await page.call(looks.mark_controls), reached = new Set(), unseen = [];
  for (let press = 0; press < wanted + 5; ++press) {
    await page.key('Tab', 9);
    const { control, seen } = await page.call(looks.focused);
    if (control !== undefined) reached.add(control);
    if (!seen) unseen.push('control ' + control);
  }
  hold(name + ': the keyboard reaches every control', reached.size === wanted ? [] : [`${reached.size} of ${wanted}`]);
  hold(name + ': where it is can be seen', unseen);
}

/// The slider moves everything to the same frequency, and what is read out is what the document says; a variant that is taken off is gone.
async function script(page, { name, url, document }) {
  await page.open(url, { width: 1280 });
  await page.call(() => window.document.getElementById('point').focus());
  await page.key('Home', 36);
  await page.key('ArrowRight', 39);
  const said = await page.call(() => [window.document.querySelector('#plot-swr-title').closest('figure').querySelector('.readout').textContent, window.document.getElementById('at').textContent]);
  const first = document.variants[0], swr = Number(first.sources[0].swr[1].toPrecision(4)).toString(), mhz = Number((first.frequencies_hz[1] / 1e6).toPrecision(7)).toString();
  hold(name + ': the slider reads out the document', said[0].startsWith(mhz + ' MHz: ') && said[0].includes(swr) && said[1] === mhz + ' MHz' ? [] : [said.join(' | ') + ` but ${mhz} MHz, ${swr}`]);
  await page.call(() => window.document.documentElement.style.setProperty('scroll-behavior', 'auto'));
  const place = await page.call(() => {
    const svg = window.document.querySelector('svg[data-plot="sweep"]');
    svg.scrollIntoView({ block: 'center' });
    const box = svg.getBoundingClientRect();
    return { x: box.left + box.width * 0.95, y: box.top + box.height / 2 };
  });
  await page.send('Input.dispatchMouseEvent', { type: 'mouseMoved', ...place });
  hold(name + ': the pointer reads out, too', await page.call(() => (Number(window.document.getElementById('point').value) > 5 ? [] : ['the point did not move'])));
  await page.call(() => window.document.getElementById('point').focus());
  await page.key('Home', 36);
  await page.key('ArrowRight', 39);
  const air = await page.call(() => [...window.document.querySelectorAll('[data-flow="0"] .stream')].at(-1).textContent);
  const watts = Number(first.loads.at(-1).radiated_w[1].toPrecision(3)).toString();
  hold(name + ': the fall follows', air.includes(watts + ' W') ? [] : [`${air} but ${watts} W`]);
  hold(name + ': the fall stays in its frame', await page.call(looks.overlaps));
  // The drawing goes along: values, heat, and which point it is.
  const drawn = await page.call(() => {
    const figure = window.document.querySelector('[data-network="0"]');
    return { caption: figure.querySelector('figcaption').textContent, letters: [...figure.querySelectorAll('.t-watts')].map((text) => text.textContent), bands: figure.querySelectorAll('[data-heat]').length };
  });
  const heats = first.parts.map((part) => part.heat_w[1]).filter((heat) => heat >= 1).map((heat) => heat.toFixed(1) + ' W');
  hold(name + ': the drawing follows', drawn.caption.startsWith(`at ${mhz} MHz: `) && drawn.bands && heats.every((heat) => drawn.letters.includes(heat)) ? [] : [JSON.stringify(drawn) + ' but ' + heats]);
  await page.call(() => window.document.querySelector('[data-toggle="0"]').focus());
  await page.key(' ', 32, ' ');
  hold(name + ': a variant goes', await page.call(() => [...window.document.querySelectorAll('main [data-variant="0"]')].filter((node) => node.getClientRects().length).map((node) => node.tagName)));
  await page.key(' ', 32, ' ');
  hold(name + ': and comes back', await page.call(() => (window.document.querySelector('main [data-variant="0"]').getClientRects().length ? [] : ['it did not'])));
  hold(name + ': no complaint', page.complaints);
}

/// Without a script everything is there, and no control that would do nothing.
async function without_script(page, { name, url }) {
  await page.open(url, { width: 1280, script: false });
  const { root } = await page.send('DOM.getDocument', { depth: 0 });
  const count = async (selector) => (await page.send('DOM.querySelectorAll', { nodeId: root.nodeId, selector })).nodeIds.length;
  const complaints = [];
  for (const selector of ['#verdict', '#network svg.net', '#watts .stream', '#sweep .curve', '#reflection .trace', '#lines .curve', '#ratings table', '#dial table', '#cautions li', '#trust p', '#side-by-side table'])
    if (!(await count(selector))) complaints.push(selector + ' is missing');
  if (!(await count('#controls[hidden]'))) complaints.push('the controls are there');
  if (await count('.readout:not([hidden])')) complaints.push('a read-out is there');
  hold(name + ': complete without a script', complaints);
}

const axe_source = readFileSync(axe, 'utf8');
if (pictures) mkdirSync(pictures, { recursive: true });
const browser = await Browser.start(process.env.CHROMIUM || 'chromium');
try {
  const page = await browser.page();
  for (const one of pages) await look(page, one);
  const named = (name) => pages.find((one) => one.name === name);
  for (const name of ['02_tuner_at_rig_or_mast', '06_end_fed_wire', 'checked_page']) await keyboard(page, named(name));
  await script(page, named('02_tuner_at_rig_or_mast'));
  await without_script(page, named('02_tuner_at_rig_or_mast'));
  const title = await (await page.open(named('hostile').url, { width: 768 }), page.call(() => window.document.title));
  hold('hostile: the title is text', title === named('hostile').document.design.title ? [] : [title]);
  await page.close();
} finally {
  await browser.stop();
  rmSync(folder, { recursive: true, force: true });
}
console.log(`${checks - failures} of ${checks} checks passed on ${pages.length} pages`);
process.exit(failures ? 1 : 0);

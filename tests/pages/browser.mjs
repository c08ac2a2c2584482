// Drives a Chromium over its debugging pipe: messages of JSON with a zero byte between them, so nothing but Node itself is needed.
import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

export class Browser {
  static async start(program) {
    const browser = new Browser();
    browser.folder = mkdtempSync(join(tmpdir(), 'pages-'));
    browser.child = spawn(program, ['--headless=new', '--remote-debugging-pipe', '--no-sandbox', '--disable-gpu', '--no-first-run', '--hide-scrollbars',
      '--disable-dev-shm-usage', '--disable-extensions', '--disable-background-networking', '--host-resolver-rules=MAP * ~NOTFOUND', '--allow-file-access-from-files',
      '--user-data-dir=' + browser.folder, 'about:blank'], { stdio: ['ignore', 'ignore', 'ignore', 'pipe', 'pipe'] });
    browser.waiting = new Map();
    browser.listeners = [];
    browser.next = 1;
    let text = '';
    browser.child.stdio[4].setEncoding('utf8').on('data', (piece) => {
      text += piece;
      const messages = text.split('\0');
      text = messages.pop();
      for (const message of messages) browser.take(JSON.parse(message));
    });
    browser.child.on('exit', () => browser.waiting.forEach(({ reject }) => reject(new Error('the browser ended'))));
    browser.child.on('error', (error) => browser.waiting.forEach(({ reject }) => reject(error)));
    return browser;
  }

  take(message) {
    if (message.id) {
      const { resolve, reject } = this.waiting.get(message.id);
      this.waiting.delete(message.id);
      message.error ? reject(new Error(message.error.message)) : resolve(message.result);
    } else {
      for (const listen of this.listeners) listen(message);
    }
  }

  send(method, params = {}, sessionId) {
    const id = this.next++;
    this.child.stdio[3].write(JSON.stringify({ id, method, params, sessionId }) + '\0');
    return new Promise((resolve, reject) => this.waiting.set(id, { resolve, reject }));
  }

  async page() {
    const { targetId } = await this.send('Target.createTarget', { url: 'about:blank' });
    const { sessionId } = await this.send('Target.attachToTarget', { targetId, flatten: true });
    const page = new Page(this, sessionId, targetId);
    for (const domain of ['Page', 'Runtime', 'Network', 'Log']) await page.send(domain + '.enable');
    return page;
  }

  async stop() {
    const gone = new Promise((resolve) => this.child.on('exit', resolve));
    await this.send('Browser.close').catch(() => {});
    await gone;
    rmSync(this.folder, { recursive: true, force: true, maxRetries: 5 });
  }
}

class Page {
  constructor(browser, sessionId, targetId) {
    Object.assign(this, { browser, sessionId, targetId, complaints: [] });
    browser.listeners.push((message) => message.sessionId === sessionId && this.hear(message));
  }

  hear({ method, params }) {
    if (method === 'Page.loadEventFired') this.loaded?.();
    if (method === 'Runtime.consoleAPICalled') this.complaints.push('console: ' + params.args.map((a) => a.value ?? a.description).join(' '));
    if (method === 'Runtime.exceptionThrown') this.complaints.push('exception: ' + (params.exceptionDetails.exception?.description ?? params.exceptionDetails.text));
    if (method === 'Log.entryAdded') this.complaints.push('log: ' + params.entry.text);
    if (method === 'Network.requestWillBeSent' && !/^(file|data|blob|about):/.test(params.request.url)) this.complaints.push('request: ' + params.request.url);
    if (method === 'Network.requestWillBeSent' && params.request.url.startsWith('file:') && params.type !== 'Document') this.complaints.push('request: ' + params.request.url);
  }

  send(method, params) {
    return this.browser.send(method, params, this.sessionId);
  }

  async resize({ width, scheme = 'light', media = '' }) {
    await this.send('Emulation.setDeviceMetricsOverride', { width, height: 900, deviceScaleFactor: 1, mobile: false });
    await this.send('Emulation.setEmulatedMedia', { media, features: [{ name: 'prefers-color-scheme', value: scheme }] });
  }

  async open(url, { width, scheme, media, script = true }) {
    await this.resize({ width, scheme, media });
    await this.send('Emulation.setScriptExecutionDisabled', { value: !script });
    this.complaints = [];
    const loaded = new Promise((resolve) => (this.loaded = resolve));
    await this.send('Page.navigate', { url });
    await loaded;
  }

  async call(run, ...args) {
    const { result, exceptionDetails } = await this.send('Runtime.evaluate', {
      expression: `(${run})(...${JSON.stringify(args)})`, awaitPromise: true, returnByValue: true });
    if (exceptionDetails) throw new Error(exceptionDetails.exception?.description ?? exceptionDetails.text);
    return result.value;
  }

  async run(source) {
    await this.send('Runtime.evaluate', { expression: source });
  }

  async key(key, code, text) {
    await this.send('Input.dispatchKeyEvent', { type: text ? 'keyDown' : 'rawKeyDown', key, code: key === ' ' ? 'Space' : key, windowsVirtualKeyCode: code, text });
    await this.send('Input.dispatchKeyEvent', { type: 'keyUp', key, code: key === ' ' ? 'Space' : key, windowsVirtualKeyCode: code });
  }

  async picture() {
    const { data } = await this.send('Page.captureScreenshot', { format: 'png', captureBeyondViewport: true });
    return Buffer.from(data, 'base64');
  }

  async close() {
    await this.browser.send('Target.closeTarget', { targetId: this.targetId });
  }
}

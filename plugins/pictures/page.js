// What the page can do besides: a frequency to look at, read-outs under the pointer, variants on and off, the data as a file. The page is complete without it.
'use strict';
(() => {
  const doc = JSON.parse(document.getElementById('result').textContent);
  const variants = doc.variants;
  // Of all variants together: files that are compared may have swept other bands.
  const frequencies = [...new Set(variants.flatMap((variant) => variant.frequencies_hz))].sort((a, b) => a - b);
  const byId = (id) => document.getElementById(id);
  const all = (selector, root = document) => [...root.querySelectorAll(selector)];
  const svgNode = (name, attributes) => {
    const node = document.createElementNS('http://www.w3.org/2000/svg', name);
    for (const [key, value] of Object.entries(attributes)) node.setAttribute(key, value);
    return node;
  };
  const off = new Set();
  let point = 0;

  // ---- numbers as the trade writes them
  const prefixes = { Hz: [[1e9, 'GHz'], [1e6, 'MHz'], [1e3, 'kHz']], W: [[1e3, 'kW'], [1, 'W'], [1e-3, 'mW'], [1e-6, 'µW'], [1e-9, 'nW'], [1e-12, 'pW']],
    V: [[1e3, 'kV'], [1, 'V'], [1e-3, 'mV'], [1e-6, 'µV']], A: [[1, 'A'], [1e-3, 'mA'], [1e-6, 'µA']], ohm: [[1e6, 'MΩ'], [1e3, 'kΩ'], [1, 'Ω']],
    F: [[1e-6, 'µF'], [1e-9, 'nF'], [1e-12, 'pF']], H: [[1, 'H'], [1e-3, 'mH'], [1e-6, 'µH'], [1e-9, 'nH']] };
  const plain = (value, digits) => Number(value.toPrecision(digits)).toString().replace('-', '−');
  const spell = (value, unit, digits = 3) => {
    if (value === null || value === undefined || !isFinite(value)) return unit === '' ? 'infinite' : '–';
    if (unit === 'W' && value !== 0 && Math.abs(value) < 1e-15) return '<1 fW';
    if (unit === 'share') return plain(100 * value, digits) + ' %';
    if (unit === '') return plain(value, digits);
    const list = prefixes[unit] || [[1, unit]];
    const [factor, name] = list.find(([least]) => Math.abs(value) >= least) || list[list.length - 1];
    return plain(value / factor, digits) + ' ' + name;
  };

  // ---- where a curve is
  const nearest = (list, value) => {
    let best = 0;
    for (let i = 1; i < list.length; ++i) if (Math.abs(list[i] - value) < Math.abs(list[best] - value)) best = i;
    return best;
  };
  const own = (variant) => nearest(variants[variant].frequencies_hz, frequencies[point]);
  const follow = (variant, path) => path.split('/').reduce((at, step) => (at ? at[step] : undefined), variants[variant]);
  const valueAt = (variant, path) => {
    const [series, part] = path.split('|');
    const list = follow(variant, series);
    const value = list ? list[own(variant)] : undefined;
    return part === undefined || !value ? value : value[Number(part)];
  };
  const across = (pieces, value) => {
    for (const [first, last, from, to] of pieces)
      if (value <= last * (1 + 1e-9) || last === pieces[pieces.length - 1][1])
        return last > first ? from + (to - from) * (value - first) / (last - first) : (from + to) / 2;
    return 0;
  };
  const up = ([low, high, bottom, top, log], value) => {
    const share = log ? Math.log(value / low) / Math.log(high / low) : (value - low) / (high - low);
    return bottom + (top - bottom) * Math.min(1, Math.max(0, share));
  };

  // ---- read-outs
  const read = (figure, text) => {
    const place = figure.querySelector('.readout');
    place.hidden = text === '';
    place.textContent = text;
  };
  const mark = (cursor, x, y, kind) => cursor.append(svgNode('circle', { class: 'dot v' + kind, cx: x.toFixed(1), cy: y.toFixed(1), r: 5 }));
  const onSweep = (svg) => {
    const cursor = svg.querySelector('.cursor');
    const pieces = JSON.parse(svg.dataset.x), scale = JSON.parse(svg.dataset.y);
    cursor.replaceChildren();
    const x = across(pieces, frequencies[point]);
    cursor.append(svgNode('path', { class: 'hair', d: `M${x.toFixed(1)} ${scale[3]}V${scale[2]}` }));
    const said = [];
    for (const curve of all('.curve', svg)) {
      const variant = Number(curve.dataset.variant);
      if (off.has(variant)) continue;
      const value = valueAt(variant, curve.dataset.path);
      said.push((variants.length > 1 ? curve.dataset.name + ' ' : '') + spell(value, svg.dataset.unit, 4));
      const here = across(pieces, variants[variant].frequencies_hz[own(variant)]);
      if (value !== null && isFinite(value)) mark(cursor, here, up(scale, value), variant % 4);
    }
    read(svg.closest('figure'), spell(frequencies[point], 'Hz', 7) + ': ' + said.join(' · '));
  };
  const onCircle = (svg) => {
    const cursor = svg.querySelector('.cursor');
    const reference = Number(svg.dataset.reference);
    cursor.replaceChildren();
    const said = [];
    for (const trace of all('.trace', svg)) {
      const variant = Number(trace.dataset.variant);
      const z = valueAt(variant, trace.dataset.path);
      if (!z) continue;
      const r = z[0] / reference, x = z[1] / reference, size = (r + 1) ** 2 + x ** 2;
      mark(cursor, 190 + 160 * ((r * r - 1 + x * x) / size), 190 - 160 * (2 * x / size), trace.classList.contains('load') ? 'l' : variant % 4);
      said.push(`${trace.dataset.name} ${plain(z[0], 3)} ${z[1] < 0 ? '−' : '+'} j${plain(Math.abs(z[1]), 3)} Ω`);
    }
    read(svg.closest('figure'), spell(frequencies[point], 'Hz', 7) + ': ' + said.join(' · '));
  };

  // ---- the fall of watts, by the measures of the one that came with the page
  const fall = (figure) => {
    const variant = Number(figure.dataset.flow);
    const at = own(variant);
    const available = variants[variant].totals.available_w[at];
    const full = 130, spout = 182, head = 46, turn = 10, n = (value) => value.toFixed(2);
    let remaining = full, y = head;
    for (const stream of all('.stream', figure)) {
      const watts = follow(variant, stream.dataset.path)[at];
      const share = Math.max(0, watts / available) || 0;
      const wide = Math.min(full * share, remaining), shown = Math.max(wide, share > 0 ? 0.8 : 0);
      remaining -= wide;
      const x = 10 + remaining, outer = x + shown, foot = y + shown;
      stream.querySelector('path').setAttribute('d', `M${n(x)} ${head - 8}L${n(x)} ${n(foot)}Q${n(x)} ${n(foot + turn)} ${n(x + turn)} ${n(foot + turn)}L${spout} ${n(foot + turn)}` +
        `L${spout} ${n(y + turn)}L${n(outer + turn)} ${n(y + turn)}Q${n(outer)} ${n(y + turn)} ${n(outer)} ${n(y)}L${n(outer)} ${head - 8}Z`);
      stream.querySelector('.who').setAttribute('y', n(y + turn + wide / 2 - 3));
      stream.querySelector('.watts').setAttribute('y', n(y + turn + wide / 2 + 14));
      stream.querySelector('.watts').textContent = spell(watts, 'W') + ' · ' + (share > 0 && share < 5e-4 ? '<0.1' : (100 * share).toFixed(1)) + ' %';
      y += Math.max(42, wide + 12, wide / 2 + 40);
    }
    figure.querySelector('.from').textContent = spell(available, 'W') + ' to give';
    figure.querySelector('svg').setAttribute('viewBox', `0 0 380 ${n(y + 10)}`);
    figure.querySelector('figcaption').textContent = 'at ' + spell(variants[variant].frequencies_hz[at], 'Hz', 7);
  };

  // ---- the drawing: values and heat, by the measures of the one that came with the page; switches stay as they are drawn
  const spellComplex = ([re, im]) => (im === 0 ? spell(re, 'ohm') : `${plain(re, 3)} ${im < 0 ? '−' : '+'} j${plain(Math.abs(im), 3)} Ω`);
  const said = { complex: spellComplex, level: (value) => plain(value, 4) + ' dB',
    length: (value) => (value < 1 ? plain(100 * value, 4) + ' cm' : plain(value, 4) + ' m'),
    turns: (value) => (value >= 1 ? 'turns 1:' + plain(value, 4) : 'turns ' + plain(1 / value, 4) + ':1') };
  const network = (figure) => {
    const variant = Number(figure.dataset.network), at = own(variant), { available_w, radiated_w, total_loss_db } = variants[variant].totals;
    const heat = (paths) => paths.split(' ').reduce((sum, path) => sum + (follow(variant, path)[at] ?? 0), 0);
    for (const text of all('[data-watts]', figure)) {
      const watts = heat(text.dataset.watts);
      text.textContent = (watts >= 1 ? watts.toFixed(1) + ' W' : spell(watts, 'W', 2)) + (text.dataset.after ?? '');
    }
    for (const text of all('[data-value]', figure)) {
      const value = follow(variant, text.dataset.value)[at], unit = text.dataset.unit;
      if (value === null) continue;
      text.textContent = (said[unit] ? said[unit](value) : spell(value, unit, unit === 'W' ? 3 : 4)) + (text.dataset.after ?? '');
    }
    for (const band of all('[data-heat]', figure)) {
      const share = heat(band.dataset.heat) / available_w[at];
      band.setAttribute('stroke-width', share >= 5e-4 ? Math.min(34, 4 + 38 * Math.sqrt(share)).toFixed(2) : 0);
    }
    let words = `at ${spell(variants[variant].frequencies_hz[at], 'Hz', 6)}: ${spell(radiated_w[at], 'W')} of ${spell(available_w[at], 'W')} on the air, ${spell(total_loss_db[at], 'dB')} lost on the way`;
    const caption = figure.querySelector('figcaption');
    if ('switched' in figure.dataset) words += '; switches as ' + (caption.dataset.first ??= caption.textContent.replace(/[,:].*/s, ''));
    caption.textContent = words;
  };

  // ---- curves along lines: the nearest point that was sampled
  const along = (svg) => {
    const curve = svg.querySelector('.curve');
    const variant = Number(curve.dataset.variant);
    const steps = curve.dataset.path.split('/'), key = steps.pop();
    const samples = follow(variant, steps.join('/'));
    if (!samples || !samples.length) return;
    const one = samples[nearest(samples.map((s) => s.frequency_hz), frequencies[point])];
    const cursor = svg.querySelector('.cursor'), printed = Number(svg.dataset.at);
    cursor.replaceChildren();
    if (Math.abs(one.frequency_hz - printed) <= 1e-9 * printed) return read(svg.closest('figure'), '');
    const most = one[key].reduce((a, b) => Math.max(a, b), 0), place = one.from_load_m[one[key].indexOf(most)];
    const pieces = JSON.parse(svg.dataset.x), scale = JSON.parse(svg.dataset.y);
    const length = one.from_load_m[one.from_load_m.length - 1];
    // A line may be longer or shorter at another setting; the axis keeps its length in shares of the line.
    const x = (metres) => pieces[0][2] + (pieces[pieces.length - 1][3] - pieces[0][2]) * metres / length;
    cursor.append(svgNode('path', { class: 'hair', d: one[key].map((value, i) => (i ? 'L' : 'M') + x(one.from_load_m[i]).toFixed(1) + ' ' + up(scale, value).toFixed(1)).join('') }));
    read(svg.closest('figure'), `Dashed, at ${spell(one.frequency_hz, 'Hz', 7)}: at most ${spell(most, svg.dataset.unit)}, ${plain(place, 3)} m from the load end`);
  };

  const slider = byId('point'), output = byId('at');
  // Until a frequency is chosen the falls stay at the points that they came with: where least gets on the air, variant by variant.
  let moved = false;
  const show = (next) => {
    point = Math.min(Math.max(next, 0), frequencies.length - 1);
    slider.value = point;
    output.textContent = spell(frequencies[point], 'Hz', 7);
    slider.setAttribute('aria-valuetext', output.textContent);
    for (const svg of all('svg[data-plot]')) ({ sweep: onSweep, circle: onCircle, along })[svg.dataset.plot](svg);
    if (moved) {
      for (const figure of all('[data-flow]')) fall(figure);
      for (const figure of all('[data-network]')) network(figure);
    }
  };

  const begin = () => {
    if (!frequencies.length) return;
    byId('controls').hidden = frequencies.length < 2 && variants.length < 2;
    slider.max = frequencies.length - 1;
    slider.disabled = frequencies.length < 2;
    slider.addEventListener('input', () => {
      moved = true;
      show(Number(slider.value));
    });
    byId('controls').addEventListener('submit', (event) => event.preventDefault());
    for (const svg of all('svg[data-plot="sweep"]'))
      svg.addEventListener('pointermove', (event) => {
        const place = svg.getBoundingClientRect(), x = (event.clientX - place.left) / place.width * 380;
        const pieces = JSON.parse(svg.dataset.x);
        const next = nearest(frequencies.map((hz) => across(pieces, hz)), x);
        if (next === point) return;
        moved = true;
        show(next);
      });
    for (const box of all('[data-toggle]'))
      box.addEventListener('change', () => {
        const variant = Number(box.dataset.toggle);
        box.checked ? off.delete(variant) : off.add(variant);
        for (const node of all(`[data-variant="${variant}"]`)) node.classList.toggle('off', !box.checked);
        show(point);
      });
    const { moments, thinned, frequencies_hz } = variants[0];
    const worst = moments ? moments.worst : 0;
    show(nearest(frequencies, frequencies_hz[thinned ? Math.max(0, thinned.indexOf(worst)) : worst]));
  };
  const saving = () => {
    byId('save-line').hidden = false;
    byId('save').addEventListener('click', () => {
      const link = document.createElement('a');
      link.href = URL.createObjectURL(new Blob([JSON.stringify(doc, null, 1)], { type: 'application/json' }));
      link.download = 'wattfall-result.json';
      link.click();
      URL.revokeObjectURL(link.href);
    });
  };
  begin();
  saving();
})();

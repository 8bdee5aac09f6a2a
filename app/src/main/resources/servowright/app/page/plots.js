// Plots that can be looked at closely. The server thins long recordings: each closer look asks for that stretch again.
import uPlot from '/own/uplot.js';

const ink = name => getComputedStyle(document.documentElement).getPropertyValue(name).trim();
const DASHES = [[], [7, 3], [2, 3], [9, 3, 2, 3], [4, 2]];

function lines(series, few) {
  const colours = [ink('--deed'), ink('--tight'), ink('--shown'), ink('--holds'), ink('--fails')];
  return series.map((s, i) => ({
    label: s.name,
    stroke: s.role === 'fitted' ? ink('--deed') : s.role === 'residual' ? ink('--soft') : colours[(i + (series.some(o => o.role === 'fitted') ? 1 : 0)) % colours.length],
    width: s.role === 'fitted' ? 2 : 1.1,
    dash: DASHES[i % DASHES.length],
    points: { show: few && s.role !== 'fitted' },
    spanGaps: s.role === 'fitted',
  }));
}

function joined(series) {
  const one = series[0].x;
  const shared = series.every(s => s.x.length === one.length && s.x[0] === one[0] && s.x[one.length - 1] === one[one.length - 1]);
  return shared ? [one, ...series.map(s => s.y)] : uPlot.join(series.map(s => [s.x, s.y]));
}

function unit(label) { const at = label.lastIndexOf(' in '); return at < 0 ? '' : ' ' + label.slice(at + 4); }

function chart(box, plot, series, height, zoomed, x, y) {
  const data = joined(series);
  const axis = { stroke: ink('--ink'), grid: { stroke: ink('--line'), width: .5 }, ticks: { stroke: ink('--line') } };
  const digits = v => v == null ? '' : Number(v.toPrecision(6)).toString();
  const options = {
    width: Math.max(260, box.clientWidth), height,
    scales: { x: { time: false } },
    axes: [{ ...axis, label: x, labelSize: 20, size: 40 }, { ...axis, label: y, labelSize: 20, size: 62 }],
    series: [{ label: x, value: (u, v) => digits(v) + unit(x) },
      ...lines(series, data[0].length <= 60).map(l => ({ ...l, value: (u, v) => digits(v) + unit(y) }))],
    cursor: { sync: { key: plot.title }, drag: { x: true, y: false } },
    hooks: { setSelect: [u => {
      if (u.select.width < 4) return;
      const least = u.posToVal(u.select.left, 'x'), most = u.posToVal(u.select.left + u.select.width, 'x');
      u.setSelect({ left: 0, top: 0, width: 0, height: 0 }, false);
      zoomed(least, most);
    }] },
  };
  const u = new uPlot(options, data, box);
  u.over.addEventListener('dblclick', event => { event.stopImmediatePropagation(); zoomed(null, null); }, true);
  return u;
}

function button(text, name, deed) {
  const b = document.createElement('button');
  b.type = 'button'; b.className = 'quiet'; b.textContent = text; b.setAttribute('aria-label', name);
  b.addEventListener('click', deed);
  return b;
}

function csv(plot) {
  const all = [...plot.series, ...plot.strip];
  const cell = text => '"' + String(text).replaceAll('"', '""') + '"';
  const rows = ['series,' + cell(plot.x) + ',' + cell(plot.y)];
  all.forEach(s => s.x.forEach((x, i) => rows.push(cell(s.name) + ',' + x + ',' + (s.y[i] ?? ''))));
  return URL.createObjectURL(new Blob([rows.join('\n') + '\n'], { type: 'text/csv' }));
}

export async function draw(figure) {
  if (figure.dataset.drawn) return;
  figure.dataset.drawn = 'yes';
  const begun = performance.now();
  const box = figure.querySelector('.picture');
  const closer = figure.dataset.closer === 'true';
  const ask = async (least, most) => {
    const stretch = least == null ? '' : (figure.dataset.plot.includes('?') ? '&' : '?') + 'first=' + least + '&last=' + most;
    const answer = await fetch(figure.dataset.plot + stretch);
    if (!answer.ok) throw new Error(await answer.text());
    return answer.json();
  };
  const wanted = plots => figure.dataset.number ? [plots[Number(figure.dataset.number)]] : plots;
  let plots = wanted(await ask(null, null));
  let charts = [], range = null;

  const whole = () => { const x = plots[0].series.flatMap(s => [s.x[0], s.x[s.x.length - 1]]); return [Math.min(...x), Math.max(...x)]; };
  const all = whole();
  const show = () => {
    charts.forEach(u => u.destroy());
    box.replaceChildren();
    charts = plots.flatMap(plot => {
      const wide = box.clientWidth > 700 ? 320 : 240;
      const made = plot.series.length ? [chart(box, plot, plot.series, wide, zoom, plot.x, plot.y)] : [];
      if (plot.strip.length) made.push(chart(box, plot, plot.strip, 130, zoom, plot.x, plot.y));
      return made;
    });
    charts.forEach(u => { u.root.setAttribute('role', 'img'); u.root.setAttribute('aria-label', plots[0].description); });
    if (range && !closer) charts.forEach(u => u.setScale('x', { min: range[0], max: range[1] }));
    if (box.querySelector('a')) box.querySelector('a').remove();
  };
  async function zoom(least, most) {
    const start = performance.now();
    range = least == null ? null : [Math.max(least, all[0]), Math.min(most, all[1])];
    if (closer) { plots = wanted(await ask(...(range || [null, null]))); }
    show();
    exports();
    figure.dataset.zoomed = String(performance.now() - start);
  }
  const now = () => range || all;
  const scaled = factor => { const [a, b] = now(), m = (a + b) / 2, h = (b - a) / 2 * factor; return zoom(m - h, m + h); };
  const moved = share => {
    const [a, b] = now(); let by = (b - a) * share;
    by = Math.min(Math.max(by, all[0] - a), all[1] - b);
    return zoom(a + by, b + by);
  };
  const deeds = document.createElement('p');
  deeds.className = 'plot-deeds';
  deeds.append(button('closer', 'Look closer', () => scaled(.5)), button('wider', 'Look wider', () => scaled(2)),
    button('←', 'Move to earlier', () => moved(-.5)), button('→', 'Move to later', () => moved(.5)),
    button('whole', 'Show the whole', () => zoom(null, null)));
  const link = document.createElement('a');
  link.textContent = 'CSV'; link.download = 'plot.csv';
  let svg = null;
  if (closer) { svg = document.createElement('a'); svg.textContent = 'SVG'; svg.download = 'plot.svg'; }
  function exports() {
    const query = range ? '&first=' + range[0] + '&last=' + range[1] : '';
    if (closer) {
      link.href = figure.dataset.plot.replace('plots.json', 'rows.csv') + query;
      svg.href = figure.dataset.plot.replace('plots.json', 'plot.svg') + query;
    } else {
      if (link.href) URL.revokeObjectURL(link.href);
      link.href = csv(plots[0]);
    }
  }
  const old = figure.querySelector('.plot-deeds');
  if (old) { deeds.append(...old.childNodes); old.remove(); }
  deeds.append(link);
  if (svg) deeds.append(svg);
  figure.append(deeds);
  show();
  exports();
  let last = box.clientWidth;
  new ResizeObserver(() => { if (Math.abs(box.clientWidth - last) > 8) { last = box.clientWidth; show(); } }).observe(box);
  figure.dataset.took = String(performance.now() - begun);
}

// Everything here is also there without it: links lead to pages of their own, forms send themselves.
const parse = text => new DOMParser().parseFromString(text, 'text/html');
const get = async (address, signal) => parse(await (await fetch(address, { signal, credentials: 'same-origin' })).text());
const main = () => document.getElementById('content');

// A working, or a value to change, lies beside its number.
const drawer = document.createElement('dialog');
drawer.className = 'drawer';
drawer.setAttribute('aria-label', 'Beside the number');
document.body.append(drawer);
let opener = null;

async function beside(address, from) {
  const page = await get(address);
  const drawn = page.querySelector('.drawn');
  if (!drawn) { location.assign(address); return; }
  const close = document.createElement('button');
  close.type = 'button';
  close.className = 'close quiet';
  close.textContent = 'Close';
  close.addEventListener('click', shut);
  drawn.querySelectorAll('[data-back]').forEach(f => { f.value = location.pathname + location.search; });
  drawer.replaceChildren(close, drawn);
  if (from && !drawer.contains(from)) opener = from;
  if (!drawer.open) drawer.show();
  drawer.scrollTop = 0;
  (drawn.querySelector('[autofocus]') || close).focus();
}

function shut() {
  if (!drawer.open) return;
  drawer.close();
  drawer.replaceChildren();
  if (opener && opener.isConnected) opener.focus();
}

document.addEventListener('click', event => {
  const link = event.target.closest('a');
  if (!link || event.ctrlKey || event.metaKey || event.shiftKey || event.button) return;
  const address = link.getAttribute('href');
  if (drawer.contains(link) && address.startsWith('#')) {
    event.preventDefault();
    const line = drawer.querySelector(address);
    if (line) { line.tabIndex = -1; line.focus(); line.scrollIntoView({ block: 'center' }); }
  } else if (link.hasAttribute('data-drawer')) {
    event.preventDefault();
    beside(link.href, link).catch(() => location.assign(link.href));
  }
});
document.addEventListener('submit', event => {
  event.target.querySelectorAll('[data-here]').forEach(f => { f.value = location.pathname + location.search; });
});
document.addEventListener('keydown', event => { if (event.key === 'Escape') shut(); });

// Forms that compute follow what is typed; the address follows too, so that it can be kept.
let running = null;
async function live(form) {
  const typed = new URLSearchParams([...new FormData(form)].filter(([, v]) => String(v).trim() !== ''));
  const address = form.getAttribute('action') + (String(typed) ? '?' + typed : '');
  if (running) running.abort();
  running = new AbortController();
  const begun = performance.now();
  try {
    const page = await get(address, running.signal);
    const id = form.dataset.live;
    const fresh = page.getElementById(id);
    const here = document.getElementById(id);
    if (!fresh || !here) return;
    here.replaceChildren(...fresh.childNodes);
    form.querySelectorAll('[data-wrong]').forEach(box => {
      const now = page.getElementById(box.id);
      if (now) box.replaceChildren(...now.childNodes);
    });
    form.querySelectorAll('input[id]').forEach(field => {
      const now = page.getElementById(field.id);
      if (now && now.hasAttribute('aria-invalid')) field.setAttribute('aria-invalid', 'true');
      else field.removeAttribute('aria-invalid');
    });
    if (location.pathname === form.getAttribute('action')) history.replaceState(null, '', address);
    here.dataset.took = String(performance.now() - begun);
  } catch (gone) { if (gone.name !== 'AbortError') throw gone; }
}
document.addEventListener('input', event => {
  const form = event.target.closest('form[data-live]');
  if (!form) return;
  const beside = event.target.dataset.shows && document.getElementById(event.target.dataset.shows);
  if (beside) beside.textContent = event.target.value + ' ' + (event.target.dataset.unit || '');
  live(form);
});

// A recording is dropped anywhere on its box.
const box = event => event.target instanceof Element ? event.target.closest('form.drop') : null;
['dragenter', 'dragover'].forEach(e => document.addEventListener(e, event => {
  if (box(event)) { event.preventDefault(); box(event).classList.add('over'); }
}));
document.addEventListener('dragleave', event => { if (box(event)) box(event).classList.remove('over'); });
document.addEventListener('drop', event => {
  const form = box(event);
  if (!form) return;
  event.preventDefault();
  form.classList.remove('over');
  if (event.dataTransfer.files.length) { form.querySelector('input[type=file]').files = event.dataTransfer.files; form.requestSubmit(); }
});
document.addEventListener('change', event => {
  if (box(event) && event.target.type === 'file' && event.target.files.length) box(event).requestSubmit();
});

// The files change: what is shown follows, unless somebody is writing. To stop a computation is not writing.
const writing = () => document.querySelector('main form[method=post]:not(.drop, .waiting form), .drawer form[method=post]')
  || [...document.querySelectorAll('.drop input[type=file]')].some(f => f.files.length > 0);

async function follow() {
  if (writing()) {
    const notice = document.getElementById('notice');
    notice.innerHTML = '<p class="notice">The files have changed on the disk. What you are writing stays; nothing is overwritten unasked.</p>';
    return;
  }
  const page = await get(location.href);
  const fresh = page.getElementById('content');
  if (!fresh || writing() || (document.activeElement && document.activeElement.closest('form[data-live]'))) return;
  const open = [...document.querySelectorAll('details')].map(d => d.open);
  const held = document.getElementById('notice').innerHTML;
  ['.head', '.axes', '#content'].forEach(part => {
    const now = document.querySelector(part), next = page.querySelector(part);
    if (!now || !next) return;
    const kept = now.querySelector('form.drop'), made = next.querySelector('form.drop');
    now.replaceWith(next);
    if (kept && made) made.replaceWith(kept); // somebody may be choosing a file for it just now
  });
  document.querySelectorAll('details').forEach((d, i) => { if (open[i] !== undefined) d.open = open[i]; });
  if (!document.getElementById('notice').innerHTML.trim()) document.getElementById('notice').innerHTML = held;
  plots();
  again();
}
let pending = 0;
function again() {
  clearTimeout(pending);
  if (document.querySelector('[data-again]')) pending = setTimeout(() => follow().catch(() => {}), 300);
}
const changes = new EventSource('/changes');
changes.addEventListener('change', () => follow().catch(() => {}));
// What changed between the making of this view and now, or while the connection was gone.
changes.addEventListener('state', event => { if (event.data !== main().dataset.state) follow().catch(() => {}); });
addEventListener('pagehide', () => changes.close());

async function plots() {
  if (!main().querySelector('[data-plot]')) return;
  const { draw } = await import('/own/plots.js');
  main().querySelectorAll('[data-plot]').forEach(draw);
}
plots();
again();
const cameFrom = document.referrer.startsWith(location.origin + '/') ? new URL(document.referrer) : null;
document.querySelectorAll('[data-back]').forEach(f => {
  if (f.value === '/' && cameFrom && cameFrom.pathname !== location.pathname) f.value = cameFrom.pathname + cameFrom.search;
});

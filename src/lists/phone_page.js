
(() => {
  'use strict';
  const shots = [...document.querySelectorAll('.shot')];
  const key = 'throwline shots done: ' + document.body.dataset.production;

  // A page opened from a file or in a private window may not be allowed to keep anything.
  const kept = () => {
    try {
      const names = JSON.parse(localStorage.getItem(key));
      return Array.isArray(names) ? names : [];
    } catch {
      return [];
    }
  };
  const keep = (names) => {
    try {
      localStorage.setItem(key, JSON.stringify(names));
    } catch {
      // The marks hold until the page is closed.
    }
  };

  const box = (shot) => shot.querySelector('input');
  const count = document.getElementById('done-count');
  const camera = document.getElementById('of-camera');
  const left = document.getElementById('only-left');
  const show = () => {
    let done = 0;
    for (const shot of shots) {
      const is_done = box(shot).checked;
      done += is_done ? 1 : 0;
      shot.classList.toggle('is-done', is_done);
      shot.hidden = (camera.value !== '' && shot.dataset.camera !== camera.value) || (left.checked && is_done);
    }
    count.textContent = done + ' of ' + shots.length + ' done';
  };

  const done_before = new Set(kept());
  for (const shot of shots) {
    box(shot).checked = done_before.has(shot.dataset.shot);
    box(shot).addEventListener('change', () => {
      keep(shots.filter((each) => box(each).checked).map((each) => each.dataset.shot));
      show();
    });
  }
  camera.addEventListener('change', show);
  left.addEventListener('change', show);
  document.getElementById('shot-choices').hidden = shots.length === 0;
  show();

  // Two fingers, or the wheel with a key held, size the floor plan about the place between them.
  const floor = document.querySelector('.floor');
  const drawing = floor.querySelector('svg');
  const fingers = new Map();
  let gap_before = 0;
  const resize = (factor, x, y) => {
    const least = floor.clientWidth;
    const before = drawing.getBoundingClientRect();
    const width = Math.min(Math.max(before.width * factor, least), 12 * least);
    const rest = width / before.width - 1;
    drawing.style.width = width + 'px';
    floor.scrollLeft += (x - before.left) * rest;
    floor.scrollTop += (y - before.top) * rest;
  };
  const gap = () => {
    const [a, b] = [...fingers.values()];
    return { wide: Math.hypot(a.x - b.x, a.y - b.y), x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
  };
  floor.addEventListener('pointerdown', (event) => {
    fingers.set(event.pointerId, { x: event.clientX, y: event.clientY });
    gap_before = fingers.size === 2 ? gap().wide : 0;
  });
  floor.addEventListener('pointermove', (event) => {
    if (!fingers.has(event.pointerId)) {
      return;
    }
    fingers.set(event.pointerId, { x: event.clientX, y: event.clientY });
    if (fingers.size === 2 && gap_before > 0) {
      const now = gap();
      resize(now.wide / gap_before, now.x, now.y);
      gap_before = now.wide;
    }
  });
  for (const end of ['pointerup', 'pointercancel', 'pointerleave']) {
    floor.addEventListener(end, (event) => fingers.delete(event.pointerId));
  }
  floor.addEventListener('wheel', (event) => {
    if (event.ctrlKey) {
      event.preventDefault();
      resize(event.deltaY < 0 ? 1.2 : 1 / 1.2, event.clientX, event.clientY);
    }
  }, { passive: false });
  for (const size of document.querySelectorAll('input[name="zoom"]')) {
    size.addEventListener('change', () => { drawing.style.width = ''; });
  }

  // Paper shows everything.
  addEventListener('beforeprint', () => {
    for (const folded of document.querySelectorAll('details')) {
      folded.open = true;
    }
  });
})();

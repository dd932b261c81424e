/* global document, fetch, navigator, setTimeout */
// What a page tries that somebody in the household opened: the answers that it could read.
// Read as text and run in a browser.
async (target) => {
  const read = [];
  const tryFetch = async (path, init) => {
    try {
      const response = await fetch(`${target}${path}`, init);
      if (response.type !== 'opaque') read.push(`${response.status} ${await response.text()}`);
    } catch {
      // Refused by the browser: nothing was read.
    }
  };
  const json = { 'content-type': 'application/json' };
  await tryFetch('/api/farms');
  await tryFetch('/api/farms', { mode: 'no-cors' });
  await tryFetch('/api/farms', { mode: 'no-cors', credentials: 'include' });
  await tryFetch('/api/farms/sample', { method: 'POST' });
  await tryFetch('/api/farms/sample', { method: 'POST', mode: 'no-cors' });
  await tryFetch('/api/farms/sample', { method: 'POST', headers: json, body: '{}' });
  await tryFetch('/api/farms/sample', { method: 'POST', mode: 'no-cors', body: '{}' });
  navigator.sendBeacon(`${target}/api/farms/sample`);
  const loaded = (tag, path) =>
    new Promise((resolve) => {
      const element = document.createElement(tag);
      element.onload = element.onerror = () => resolve();
      element.src = target + path;
      document.body.append(element);
      setTimeout(resolve, 1500);
    });
  await Promise.all([
    loaded('img', '/api/farms'),
    loaded('script', '/api/farms'),
    loaded('iframe', '/api/farms'),
  ]);
  const form = document.createElement('form');
  form.method = 'POST';
  form.action = `${target}/api/farms/sample`;
  const frame = document.createElement('iframe');
  frame.name = form.target = 'sink';
  document.body.append(frame, form);
  form.submit();
  await new Promise((resolve) => setTimeout(resolve, 500));
  return read;
};

// Part of the worker: a touched notice opens the day of its farm, in a page that is open already
// where there is one.
self.addEventListener('notificationclick', (event) => {
  event.notification.close();
  const { href } = event.notification.data;
  const open = async () => {
    const [page] = await self.clients.matchAll({ type: 'window', includeUncontrolled: true });
    if (!page) return self.clients.openWindow(href);
    // What is being typed on the day itself is not loaded away.
    if (new URL(page.url).pathname !== href) await page.navigate(href).catch(() => undefined);
    return page.focus();
  };
  event.waitUntil(open());
});

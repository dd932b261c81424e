// Part of the worker: a touched notice opens the day of its farm, in a page that is open already
// where there is one.
self.addEventListener('notificationclick', (event) => {
  event.notification.close();
  const { href } = event.notification.data;
  const open = async () => {
    const pages = await self.clients.matchAll({ type: 'window', includeUncontrolled: true });
    const isOnDay = (page) => new URL(page.url).pathname === href;
    // What is being typed on the day itself is not loaded away.
    const onDay = pages.find(isOnDay);
    if (onDay) return onDay.focus();
    // A page that was loaded past the worker cannot be led anywhere by it.
    const led = await pages[0]?.navigate(href).catch(() => undefined);
    return led ? led.focus() : self.clients.openWindow(href);
  };
  event.waitUntil(open());
});

// Keeps on this device what was begun: answers typed and not sent yet, and the links of enquiries, with a way to forget them.
// Nothing waits for it: without it the pages do the same, only the device forgets.
(() => {
  const LINKS = 'kitwright-hire-links';
  const FORMS = 'kitwright-hire-form ';
  const FORGOTTEN = 'kitwright-hire-forgotten';
  const MOST = 20;
  const DAYS = 60;
  const read = (key, otherwise) => {
    try {
      return JSON.parse(localStorage.getItem(key) ?? '') ?? otherwise;
    } catch {
      return otherwise;
    }
  };
  const write = (key, value) => {
    try {
      localStorage.setItem(key, JSON.stringify(value));
    } catch {
      // A device that keeps nothing is served all the same.
    }
  };
  const forget = (test) => {
    for (const key of Object.keys(localStorage)) if (test(key)) localStorage.removeItem(key);
  };
  const kept = () => read(LINKS, []).filter(({ at }) => Date.now() - at < DAYS * 86_400_000);

  const unseen = (element, isUnseen) => {
    if (element !== null) element.hidden = isUnseen;
  };
  const forgetAll = () => {
    forget((key) => key === LINKS || key.startsWith(FORMS));
    sessionStorage.setItem(FORGOTTEN, 'yes');
    for (const element of document.querySelectorAll('[data-device]')) element.hidden = true;
    for (const form of document.querySelectorAll('form[data-keep]')) form.reset();
  };
  // Whoever had it forgotten is not kept again before the page is closed.
  const isOff = sessionStorage.getItem(FORGOTTEN) === 'yes';

  // The page of an order tells which it is, so that the start page can offer it again.
  const order = document.querySelector('[data-kept-order]');
  if (order !== null && !isOff) {
    const { keptOrder: path, keptName: name } = order.dataset;
    write(LINKS, [{ path, name, at: Date.now() }, ...kept().filter((one) => one.path !== path)].slice(0, MOST));
    unseen(order, false);
  }
  // A link that opens nothing any more is offered no longer.
  if (document.querySelector('[data-gone-order]') !== null)
    write(
      LINKS,
      kept().filter(({ path }) => !location.pathname.startsWith(path)),
    );

  // On the start page: enquiries of this device.
  const list = document.querySelector('[data-kept-links]');
  if (list !== null && !isOff) {
    const rows = list.querySelector('ul');
    for (const { path, name, at } of kept()) {
      if (!/^\/hire\/[\w-]{20,100}$/.test(path)) continue;
      const row = document.createElement('li');
      const link = document.createElement('a');
      link.href = path;
      link.textContent = `${name}, ${new Date(at).toLocaleDateString(document.documentElement.lang)}`;
      row.append(link);
      rows.append(row);
    }
    unseen(list, rows.children.length === 0);
  }
  for (const button of document.querySelectorAll('[data-forget]')) button.addEventListener('click', forgetAll);
  for (const line of document.querySelectorAll('[data-device-line]')) unseen(line, isOff);

  // What is typed into a form stays until it is sent; secrets, files and what the page itself fills in are left out.
  for (const form of document.querySelectorAll('form[data-keep]')) {
    const key = `${FORMS}${location.pathname} ${form.dataset.keep}`;
    const fields = () =>
      [...form.elements].filter(
        ({ name, type }) => name && !['hidden', 'file', 'submit', 'button'].includes(type) && name !== 'website',
      );
    const { at = 0, values = {} } = read(key, {});
    if (Date.now() - at < DAYS * 86_400_000 && !form.hasAttribute('data-given'))
      for (const field of fields()) {
        const value = values[field.name];
        if (value === undefined) continue;
        if (field.type === 'radio' || field.type === 'checkbox') field.checked = field.value === value;
        else if (field.type !== 'date' || value >= field.min) field.value = value;
      }
    const keep = () => {
      if (sessionStorage.getItem(FORGOTTEN) === 'yes') return;
      const now = {};
      for (const field of fields())
        if (field.type !== 'radio' && field.type !== 'checkbox') now[field.name] = field.value.slice(0, 2000);
        else if (field.checked) now[field.name] = field.value;
      write(key, { at: Date.now(), values: now });
    };
    form.addEventListener('input', keep);
    form.addEventListener('change', keep);
    form.addEventListener('submit', () => localStorage.removeItem(key));
  }
})();

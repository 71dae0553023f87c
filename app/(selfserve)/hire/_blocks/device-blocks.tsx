import { hirePaths } from '#app/_lib/hire-paths.ts';
import type { OrderView } from '#lib/services/self-service/order-view.ts';
import type { Language } from '#lib/wording/language.ts';
import { say } from '#lib/wording/wording.ts';
import kept from './device.module.css';
import sheetLook from './sheet.module.css';

/** What public/hire/device.js fills in and shows; without scripts it stays unseen. React leaves alone what stands inside. */
const LEFT_ALONE = { __html: '' } as const;

/** Enquiries that were begun on this device, and how to have them forgotten. */
export function KeptLinks({ language }: { readonly language: Language }) {
  return (
    <section
      hidden
      suppressHydrationWarning
      data-device=""
      data-kept-links=""
      className={`${sheetLook.sheet} ${kept.unseen}`}
      aria-labelledby="kept"
    >
      <h2 id="kept">{say(language, 'device.title')}</h2>
      {/* biome-ignore lint/security/noDangerouslySetInnerHtml: it is empty; the script puts links in */}
      <ul className={kept.kept} suppressHydrationWarning dangerouslySetInnerHTML={LEFT_ALONE} />
      <Forget language={language} />
    </section>
  );
}

/** That what is typed stays on this device. */
export function KeptLine({ language }: { readonly language: Language }) {
  return (
    <p hidden suppressHydrationWarning data-device="" data-device-line="" className="soft">
      {say(language, 'device.line')}
    </p>
  );
}

interface KeptOrderProps {
  readonly order: OrderView;
  readonly token: string;
  readonly language: Language;
}

/** Tells the device which order this is. */
export function KeptOrder({ order, token, language }: KeptOrderProps) {
  const { name = '' } = order.site;
  return (
    <div
      hidden
      suppressHydrationWarning
      data-device=""
      data-kept-order={hirePaths.order(token)}
      data-kept-name={name === '' ? order.number : `${order.number} ${name}`}
      className={kept.kept}
    >
      <p className="soft">{say(language, 'device.order')}</p>
      <Forget language={language} />
    </div>
  );
}

function Forget({ language }: { readonly language: Language }) {
  return (
    <button type="button" data-forget="" className="button">
      {say(language, 'device.forget')}
    </button>
  );
}

export function DeviceScript() {
  return <script src="/hire/device.js" defer />;
}

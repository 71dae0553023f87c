import '@fontsource/noto-sans/400.css';
import '@fontsource/noto-sans/600.css';
import './_ui/look/house.css';
import './_ui/look/elements.css';
import './_ui/look/frame.css';
import './_ui/look/screens.css';
import './_ui/look/overlays.css';
import './_ui/look/charts.css';
import './_ui/look/access.css';
import './_ui/look/print.css';
import type { Metadata } from 'next';
import { headers } from 'next/headers';
import type { ReactNode } from 'react';
import { areasFor } from './_frame/house-areas.ts';
import { HouseHeader } from './_frame/house-header.tsx';
import { PrintHead } from './_frame/print-head.tsx';
import { ShortcutKeys } from './_frame/shortcut-keys.client.tsx';
import { asked } from './_lib/asking.ts';
import { isSelfService, PATH_HEADER } from './_lib/open-paths.ts';
import { strangerLanguage } from './_lib/stranger.ts';
import { unitSystem } from './_lib/unit-system.ts';
import { AccountMenu } from './_ui/account-menu.tsx';
import { SearchBox } from './_ui/search-box.tsx';
import { FormsProvider } from './_ui/shown-forms.client.tsx';
import { UnitsProvider } from './_ui/shown-units.client.tsx';
import { UnitSwitch } from './_ui/unit-switch.tsx';

export const metadata: Metadata = { title: { default: 'Kitwright', template: '%s · Kitwright' } };

export default async function RootLayout({ children }: { readonly children: ReactNode }) {
  const path = (await headers()).get(PATH_HEADER) ?? '/';
  if (isSelfService(path)) return <OpenDocument>{children}</OpenDocument>;
  return <HouseDocument>{children}</HouseDocument>;
}

/** Self-service brings its own frame, in the language of its reader. */
async function OpenDocument({ children }: { readonly children: ReactNode }) {
  return (
    <html lang={await strangerLanguage()}>
      <body>{children}</body>
    </html>
  );
}

async function HouseDocument({ children }: { readonly children: ReactNode }) {
  const system = await unitSystem();
  const { asker } = await asked();
  const { name, role } = asker.actor;
  const forms = { dates: asker.preferences.date_form, decimals: asker.preferences.decimal_mark };
  return (
    <html lang="en-GB">
      <body>
        <FormsProvider forms={forms}>
          <a className="skip" href="#content">
            To the content
          </a>
          {role !== 'signed-out' && (
            <HouseHeader
              areas={areasFor(role)}
              search={role === 'desk' || role === 'administrator' ? <SearchBox /> : null}
              end={
                <>
                  <ShortcutKeys />
                  <UnitSwitch system={system} />
                  <AccountMenu name={name} role={role} />
                </>
              }
            />
          )}
          <PrintHead />
          <main id="content" tabIndex={-1}>
            <UnitsProvider system={system}>{children}</UnitsProvider>
          </main>
        </FormsProvider>
      </body>
    </html>
  );
}

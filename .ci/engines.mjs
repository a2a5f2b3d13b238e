/** The engines besides Chromium, where Debian puts them, and what brings them. */
export const ENGINES = [
  { name: 'Firefox', programs: ['/usr/bin/firefox-esr'], packages: ['firefox-esr'] },
  {
    name: 'WebKit',
    programs: ['/usr/bin/WebKitWebDriver', '/usr/bin/Xvfb'],
    packages: ['webkit2gtk-driver', 'xvfb', 'python3-gi', 'gir1.2-webkit2-4.1'],
  },
];

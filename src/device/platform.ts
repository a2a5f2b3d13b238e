/** What this browser is and can do, as far as a screen must know. */
export interface Platform {
  /**
   * On iOS, in a browser tab. The installed app there has a data store of its own,
   * so install comes before anything is entered.
   */
  readonly installFirst: boolean;
  /** Started from the home screen, in a window of its own. */
  readonly installed: boolean;
  /** Whether a download ends up as a file. In an installed app on iOS it does not. */
  readonly downloads: boolean;
  /** Whether an app can start here without a network at all. */
  readonly worksOffline: boolean;
  readonly vibrates: boolean;
  readonly speaks: boolean;
}

/** @param frame The page's window. */
export function readPlatform(frame: Window): Platform {
  const { navigator } = frame;
  // Only iOS has the property: false in a tab, true from the home screen.
  const iosHomeScreen = 'standalone' in navigator ? navigator.standalone === true : null;
  return {
    installFirst: iosHomeScreen === false,
    installed: iosHomeScreen ?? frame.matchMedia('(display-mode: standalone)').matches,
    downloads: iosHomeScreen !== true,
    worksOffline: 'serviceWorker' in navigator,
    vibrates: 'vibrate' in navigator,
    speaks: 'speechSynthesis' in frame,
  };
}

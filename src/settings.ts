/** What an operator sets by environment. */
export interface Settings {
  readonly host: string
  readonly port: number
  readonly rulesFolder: string
  readonly contentFolder: string
  readonly assetsFolder: string
  readonly shopsFolder: string
  /** TrueType fonts for pictures that the server draws. */
  readonly fontsFolder: string
  /** The guide's address as the world knows it; undefined when every request says it. */
  readonly origin: string | undefined
  /** A second address of this server, for the demonstration shop. */
  readonly demoOrigin: string | undefined
  /** Requests a minute that one address may make; 0 is no limit. */
  readonly ratePerMinute: number
  /** Proxies of ours that stand before this server and say who asks. */
  readonly trustedProxies: number
  /** Processes that serve; each holds the whole guide. */
  readonly workers: number
  /** Whether every request gets a line in the log. */
  readonly logEach: boolean
  /** Seconds after SIGTERM until the process ends at the latest. */
  readonly stopSeconds: number
}

const USUAL_PORT = 3000

/**
 * Settings from the environment.
 *
 * @param env - `PORT` 0 to 65535 (0 picks a free one), `HOST`, `RULES_DIR`, `CONTENT_DIR`,
 * `SHOPS_DIR`, `ORIGIN` and `DEMO_ORIGIN` (each such as `https://guide.example`),
 * `RATE_PER_MINUTE`, `TRUSTED_PROXIES`, `WORKERS` (0 is one a core), `STOP_SECONDS`, `LOG=requests`
 * @param root - folder of the project
 * @throws {RangeError} naming the variable and what would fit
 */
export function readSettings(
  env: Readonly<Record<string, string | undefined>>,
  root: string,
): Settings {
  const contentFolder = env.CONTENT_DIR || `${root}/content`
  return {
    host: readHost(env.HOST),
    port: readPort(env.PORT),
    rulesFolder: env.RULES_DIR || `${root}/rules`,
    contentFolder,
    assetsFolder: `${root}/dist/assets`,
    shopsFolder: env.SHOPS_DIR || `${contentFolder}/shops`,
    fontsFolder: `${root}/node_modules/@expo-google-fonts`,
    origin: readOrigin('ORIGIN', env.ORIGIN),
    demoOrigin: readOrigin('DEMO_ORIGIN', env.DEMO_ORIGIN),
    ratePerMinute: readWhole('RATE_PER_MINUTE', env.RATE_PER_MINUTE, 600, 1_000_000),
    trustedProxies: readWhole('TRUSTED_PROXIES', env.TRUSTED_PROXIES, 0, 10),
    workers: readWhole('WORKERS', env.WORKERS, 1, 256),
    logEach: env.LOG === 'requests',
    stopSeconds: readWhole('STOP_SECONDS', env.STOP_SECONDS, 10, 600),
  }
}

function readPort(text: string | undefined): number {
  if (text === undefined || text === '') return USUAL_PORT
  const port = Number(text)
  if (!/^\d{1,5}$/.test(text) || port > 65_535) {
    throw new RangeError(`PORT is "${text}"; it must be a whole number from 0 to 65535`)
  }
  return port
}

function readWhole(name: string, text: string | undefined, usual: number, most: number): number {
  if (text === undefined || text === '') return usual
  const value = Number(text)
  if (!/^\d{1,9}$/.test(text) || value > most) {
    throw new RangeError(`${name} is "${text}"; it must be a whole number from 0 to ${most}`)
  }
  return value
}

function readHost(text: string | undefined): string {
  if (text === undefined || text === '') return '127.0.0.1'
  if (!/^[\w.:-]{1,253}$/.test(text)) {
    throw new RangeError(`HOST is "${text}"; it must be a host name or an address such as 0.0.0.0`)
  }
  return text
}

function readOrigin(name: string, text: string | undefined): string | undefined {
  if (text === undefined || text === '') return undefined
  if (!/^https?:\/\/[a-z0-9.-]+(:\d{1,5})?$/.test(text)) {
    throw new RangeError(`${name} is "${text}"; it must be such as https://guide.example`)
  }
  return text
}

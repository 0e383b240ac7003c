type Env = Readonly<Record<string, string | undefined>>;

// Windows programs fail to load libraries, open sockets or find their own data without these.
const windowsSystem = [
  "SystemRoot",
  "SystemDrive",
  "windir",
  "ComSpec",
  "PATHEXT",
  "USERPROFILE",
  "APPDATA",
  "LOCALAPPDATA",
  "ProgramData",
  "ProgramFiles",
  "ProgramFiles(x86)",
  "NUMBER_OF_PROCESSORS",
  "PROCESSOR_ARCHITECTURE",
] as const;

/** The environment the browser gets: its own profile as home and temporary directory, a fixed language and time zone, and of the caller's variables only those the system needs. */
export function browserEnvironment(env: Env, platform: NodeJS.Platform, profile: string): Record<string, string> {
  const own = { HOME: profile, XDG_CACHE_HOME: profile, TMPDIR: profile, LANG: "C.UTF-8", TZ: "UTC" };
  if (platform !== "win32") return { PATH: env.PATH ?? "/usr/bin:/bin", ...own };
  const passed = ["PATH", ...windowsSystem].flatMap((name) => {
    const value = anyCase(env, name);
    return value === undefined ? [] : [[name, value] as const];
  });
  return { ...Object.fromEntries(passed), ...own, TEMP: profile, TMP: profile };
}

// Names of variables have no case on Windows: `Path` is PATH.
function anyCase(env: Env, name: string): string | undefined {
  const spelled = Object.keys(env).find((key) => key.toLowerCase() === name.toLowerCase());
  return spelled === undefined ? undefined : env[spelled];
}

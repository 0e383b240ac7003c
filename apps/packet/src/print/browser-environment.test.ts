import { describe, expect, it } from "vitest";
import { browserEnvironment } from "./browser-environment.js";

describe("browserEnvironment", () => {
  it("hands no variable of the caller on but PATH", () => {
    expect(browserEnvironment({ PATH: "/p", HOME: "/home/me", SECRET: "s", SystemRoot: "C:\\Windows" }, "linux", "/tmp/profile")).toEqual({
      PATH: "/p",
      HOME: "/tmp/profile",
      XDG_CACHE_HOME: "/tmp/profile",
      TMPDIR: "/tmp/profile",
      LANG: "C.UTF-8",
      TZ: "UTC",
    });
  });

  it("hands on what Windows programs cannot start without, however it is spelled, and nothing that is absent", () => {
    const env = browserEnvironment(
      { Path: "C:\\Windows\\system32", SYSTEMROOT: "C:\\Windows", windir: "C:\\Windows", LOCALAPPDATA: "C:\\Users\\me\\AppData\\Local", SECRET: "s" },
      "win32",
      "C:\\Temp\\profile",
    );
    expect(env).toMatchObject({
      PATH: "C:\\Windows\\system32",
      SystemRoot: "C:\\Windows",
      windir: "C:\\Windows",
      LOCALAPPDATA: "C:\\Users\\me\\AppData\\Local",
    });
    expect(env).toMatchObject({ TEMP: "C:\\Temp\\profile", TMP: "C:\\Temp\\profile", TZ: "UTC" });
    expect(env).not.toHaveProperty("SECRET");
    expect(env).not.toHaveProperty("ProgramData");
  });

  it("has a PATH where the caller has none, but never a Unix one on Windows", () => {
    expect(browserEnvironment({}, "linux", "/tmp/profile").PATH).toBe("/usr/bin:/bin");
    expect(browserEnvironment({}, "win32", "C:\\profile")).not.toHaveProperty("PATH");
  });
});

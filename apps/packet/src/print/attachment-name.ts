/** A file name that stands for a file in one directory on any system: no path, no control characters, nothing that hides itself. */
export function isPlainFileName(name: string): boolean {
  return name !== "" && name.length <= 200 && !/[\p{Cc}\p{Cf}\p{Cs}\\/:*?"<>|]/u.test(name) && !name.startsWith(".") && !/[. ]$/.test(name);
}

import type { Check } from "./finding.js";
import { needsPerson, notApplicable, pass } from "./outcome.js";

export const measuredRecord: Check = {
  id: "measured-record",
  title: "A measured demand rests on a sound record",
  rule: { sections: { "2017": "220.87", "2020": "220.87", "2023": "220.87", "2026": "120.87" }, standing: "published" },
  run: ({ job }) => {
    const { measured, load_method } = job.service;
    if (load_method !== "measured-demand" || !measured) return [notApplicable("Service", "the load is computed, not measured")];
    return measured.basis === "one-year"
      ? [pass("Service", `one year of record from ${measured.from}`)]
      : [
          needsPerson(
            "Service",
            "a 30-day record stands for a year only under conditions",
            "show at least 30 days on end of 15-minute averages, with the building in use and with the larger of heating or cooling in it, or added; it does not serve where the house has a renewable energy source or peak shaving",
          ),
        ];
  },
};

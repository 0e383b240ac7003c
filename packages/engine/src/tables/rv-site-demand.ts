import { everyEdition } from "../basis/edition.js";
import type { CodeTable } from "./code-table.js";

export const RV_SITE_DEMAND = {
  id: "rv-site-demand",
  title: "Demand of recreational vehicle park sites, per cent; a row is named by the least number of sites it serves",
  sections: everyEdition("Table 551.73(A)"),
  columns: ["percent"],
  rows: {
    "1": ["100"],
    "2": ["90"],
    "3": ["80"],
    "4": ["75"],
    "5": ["65"],
    "6": ["60"],
    "7": ["55"],
    "10": ["50"],
    "13": ["48"],
    "16": ["47"],
    "19": ["45"],
    "22": ["43"],
    "25": ["42"],
    "36": ["41"],
  },
  groups: [{ rows: ["36"], standing: "published" }, { rows: ["19", "22", "25"], standing: "one-source" }, { standing: "memory" }],
  sources: [
    {
      where: "http://solar365.com/green-homes/national-electric-code-2008/recreational-vehicles-and-recreational-vehicle-parks/page/0/16?page=0,16",
      confirms: "20 sites 45 %, 22 to 24 43 %, 25 to 35 42 %, 36 and more 41 %",
    },
    { where: "http://ecmweb.com/nec/code-calculations-2?quicktabs_11=1", confirms: "42 sites 41 %" },
  ],
} as const satisfies CodeTable;

export const RV_SITE_LOAD = {
  id: "rv-site-load",
  title: "Load of one recreational vehicle park site, by its largest receptacle",
  sections: everyEdition("551.73(A)"),
  columns: ["VA"],
  rows: { "50": ["12000"], "30": ["3600"], "20": ["2400"], tent: ["600"] },
  groups: [{ rows: ["30", "20"], standing: "published" }, { rows: ["50"], standing: "one-source" }, { standing: "memory" }],
  sources: [
    {
      where:
        "https://www.snsradionetwork.com/rv-park-electrical-installation-in-eastland-county-30-and-50-amp-service-requirements-for-recreational-vehicle-sites/",
      confirms: "12,000 VA from 2017; 3,600 VA",
    },
    { where: "http://ecmweb.com/nec/code-calculations-2?quicktabs_11=1", confirms: "3,600 and 2,400 VA" },
    {
      where: "http://solar365.com/green-homes/national-electric-code-2008/recreational-vehicles-and-recreational-vehicle-parks/page/0/16?page=0,16",
      confirms: "3,600 VA",
    },
  ],
} as const satisfies CodeTable;

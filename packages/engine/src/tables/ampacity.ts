import type { CodeTable } from "./code-table.js";

export const AMPACITY = {
  id: "ampacity",
  title: "Ampacity of insulated conductors, not more than three current-carrying, 30 °C ambient",
  sections: { "2017": "Table 310.15(B)(16)", "2020": "Table 310.16", "2023": "Table 310.16", "2026": "Table 310.16" },
  columns: ["cu60", "cu75", "cu90", "al60", "al75", "al90"],
  rows: {
    "18": [null, null, "14", null, null, null],
    "16": [null, null, "18", null, null, null],
    "14": ["15", "20", "25", null, null, null],
    "12": ["20", "25", "30", "15", "20", "25"],
    "10": ["30", "35", "40", "25", "30", "35"],
    "8": ["40", "50", "55", "35", "40", "45"],
    "6": ["55", "65", "75", "40", "50", "55"],
    "4": ["70", "85", "95", "55", "65", "75"],
    "3": ["85", "100", "115", "65", "75", "85"],
    "2": ["95", "115", "130", "75", "90", "100"],
    "1": ["110", "130", "145", "85", "100", "115"],
    "1/0": ["125", "150", "170", "100", "120", "135"],
    "2/0": ["145", "175", "195", "115", "135", "150"],
    "3/0": ["165", "200", "225", "130", "155", "175"],
    "4/0": ["195", "230", "260", "150", "180", "205"],
    "250": ["215", "255", "290", "170", "205", "230"],
    "300": ["240", "285", "320", "195", "230", "260"],
    "350": ["260", "310", "350", "210", "250", "280"],
    "400": ["280", "335", "380", "225", "270", "305"],
    "500": ["320", "380", "430", "260", "310", "350"],
    "600": ["350", "420", "475", "285", "340", "385"],
    "700": ["385", "460", "520", "315", "375", "425"],
    "750": ["400", "475", "535", "320", "385", "435"],
    "800": ["410", "490", "555", "330", "395", "445"],
    "900": ["435", "520", "585", "355", "425", "480"],
    "1000": ["455", "545", "615", "375", "445", "500"],
  },
  groups: [{ rows: ["18", "16", "1000"], standing: "one-source" }, { standing: "published" }],
  sources: [
    {
      where: "http://online.flipbuilder.com/mewf/mima/files/basic-html/page742.html",
      confirms: "IRC 2018 Table E3705.1 (extract of 2017 NEC): all Cu/Al values 14 AWG..900 kcmil",
    },
    {
      where: "https://up.codes/s/conductor-sizing-and-overcurrent-protection",
      confirms: "IRC 2021 state mirror Table E3705.1: all values 14 AWG..900 kcmil, identical to the line above",
    },
    {
      where: "https://www.scribd.com/document/602627451/NEC-Table-310-16-Penghantar",
      confirms:
        "transcription of NEC Table 310.15(B)(16): 18 AWG..600 kcmil (excerpt seen to 600 kcmil 60/75/90 Cu and 60 Al), incl. 18 AWG=14 A and 16 AWG=18 A in the 90 C Cu column",
    },
    {
      where: "https://www.scribd.com/document/768710860/TABLE-310-16NEC-SIZE-CONDUCTORS-CONDUIT",
      confirms:
        "OLD (pre-2014-era) Table 310.16 to 2000 kcmil: confirms rows that never changed, incl. 1000 kcmil; and shows the old values listed in priorEditionDifferences",
    },
    {
      where: "https://www.scribd.com/doc/191591316/ampacity",
      confirms: "Cerro Wire ampacity chart: agrees except for OLD 90 C values at Cu 3 AWG (110) and 1 AWG (150) and Al 6 AWG (60)",
    },
    {
      where: "http://office.manualsonline.com/manuals/mfg/adc/power_distribution_products.html?p=37",
      confirms: "1978 NEC table in an equipment manual: old Cu values",
    },
  ],
} as const satisfies CodeTable;

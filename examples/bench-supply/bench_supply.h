/* bench-supply: what the panel shows, 320 x 240 pixels, proved by Panelproof for every value it can ever show.

   How to use it

     1. Include this header wherever its constants or functions are needed.
     2. In one source file, before that line:  #define BENCH_SUPPLY_IMPLEMENTATION
     3. Make a port of the type bench_supply_port: two functions of yours that write pixels, and a pointer for them.
     4. Fill in values of the type bench_supply_start_values and call bench_supply_start_draw(&port, &values) to
        draw a screen.
     5. Get the text of a field from bench_supply_start_message_text(buffer, ...) and show it with
        bench_supply_start_message_update(&port, buffer).

   Define BENCH_SUPPLY_NO_CHANGES to leave out the functions that send only what differs.
   Define BENCH_SUPPLY_NO_TEXT_FUNCTIONS to leave out the functions that print texts, and <stdio.h> with them.
   Where constants live apart from memory, define BENCH_SUPPLY_CONST, BENCH_SUPPLY_READ8, BENCH_SUPPLY_READ16 and BENCH_SUPPLY_READ32 before the
   implementation.
   Where the display has red and blue the other way round, or takes the low byte of a colour first, define
   BENCH_SUPPLY_BLUE_FIRST or BENCH_SUPPLY_LOW_BYTE_FIRST before the implementation: `run` gets its colours so.

   layout     bench-supply
   digest     sha256 0c7752f967a5bc7cb108ccbba7e7dc33e4cf0133c9468aed6643baa90965902a
   format     1
   made by    Panelproof 0.1.0
   type       reading: pellucet-numerals-64.bdf, 64 px, one-bit, native bitmaps
   type       second: pellucet-numerals-48.bdf, 48 px, one-bit, native bitmaps
   type       title: pellucet-bold-32.bdf, 32 px, one-bit, native bitmaps
   type       heading: pellucet-bold-20.bdf, 20 px, one-bit, native bitmaps
   type       text: pellucet-20.bdf, 20 px, one-bit, native bitmaps

   Made by Panelproof; change the layout, not this file. Not a safety device: a proof of pixels, not of measurements.
   Local codes and licensed practice come first. */

#ifndef BENCH_SUPPLY_HEADER_
#define BENCH_SUPPLY_HEADER_

#include <stddef.h>
#include <stdint.h>

/* SHA-256 of the layout's file */
#define BENCH_SUPPLY_LAYOUT_DIGEST "0c7752f967a5bc7cb108ccbba7e7dc33e4cf0133c9468aed6643baa90965902a"

/* The panel */
#define BENCH_SUPPLY_PANEL_WIDTH  320 /* px */
#define BENCH_SUPPLY_PANEL_HEIGHT 240 /* px */

/* How a text lies at its x */
#define BENCH_SUPPLY_STARTS_AT_X  0
#define BENCH_SUPPLY_CENTRED_ON_X 1
#define BENCH_SUPPLY_ENDS_AT_X    2

/* Inks, as the panel's colours (16 bits: 5 red, 6 green, 5 blue) */
#define BENCH_SUPPLY_INK_NIGHT 0x0000 /* #000000 */
#define BENCH_SUPPLY_INK_STEEL 0x21C9 /* #203848 */
#define BENCH_SUPPLY_INK_CHALK 0xFFFF /* #ffffff */
#define BENCH_SUPPLY_INK_ASH   0xA576 /* #a8b0b8 */
#define BENCH_SUPPLY_INK_VOLT  0xFDE8 /* #ffc040 */
#define BENCH_SUPPLY_INK_AMP   0x66BD /* #60d8f0 */
#define BENCH_SUPPLY_INK_WARN  0xFC8E /* #ff9070 */
#define BENCH_SUPPLY_INK_ALARM 0xA903 /* #b02018 */

/* Types: the height of a line */
#define BENCH_SUPPLY_TYPE_READING_ASCENT  56 /* px over the baseline */
#define BENCH_SUPPLY_TYPE_READING_DESCENT 8  /* px under the baseline */
#define BENCH_SUPPLY_TYPE_SECOND_ASCENT   42 /* px over the baseline */
#define BENCH_SUPPLY_TYPE_SECOND_DESCENT  6  /* px under the baseline */
#define BENCH_SUPPLY_TYPE_TITLE_ASCENT    26 /* px over the baseline */
#define BENCH_SUPPLY_TYPE_TITLE_DESCENT   6  /* px under the baseline */
#define BENCH_SUPPLY_TYPE_HEADING_ASCENT  17 /* px over the baseline */
#define BENCH_SUPPLY_TYPE_HEADING_DESCENT 3  /* px under the baseline */
#define BENCH_SUPPLY_TYPE_TEXT_ASCENT     17 /* px over the baseline */
#define BENCH_SUPPLY_TYPE_TEXT_DESCENT    3  /* px under the baseline */

/* ---- Screen `start` --------------------------------------------------------------------------------------------- */

#define BENCH_SUPPLY_START_GROUND BENCH_SUPPLY_INK_NIGHT

/* label `title` */
#define BENCH_SUPPLY_START_TITLE_X         160                       /* px */
#define BENCH_SUPPLY_START_TITLE_BASELINE  84                        /* px */
#define BENCH_SUPPLY_START_TITLE_ALIGNMENT BENCH_SUPPLY_CENTRED_ON_X
#define BENCH_SUPPLY_START_TITLE_INK       BENCH_SUPPLY_INK_CHALK
#define BENCH_SUPPLY_START_TITLE_GROUND    BENCH_SUPPLY_INK_NIGHT
#define BENCH_SUPPLY_START_TITLE_TEXT      "Bench supply"

/* rule `line` */
#define BENCH_SUPPLY_START_LINE_X         60                     /* px */
#define BENCH_SUPPLY_START_LINE_Y         100                    /* px */
#define BENCH_SUPPLY_START_LINE_LENGTH    200                    /* px across */
#define BENCH_SUPPLY_START_LINE_THICKNESS 2                      /* px */
#define BENCH_SUPPLY_START_LINE_INK       BENCH_SUPPLY_INK_STEEL

/* field `message`, clearing: pad */
#define BENCH_SUPPLY_START_MESSAGE_X                                160                       /* px */
#define BENCH_SUPPLY_START_MESSAGE_BASELINE                         136                       /* px */
#define BENCH_SUPPLY_START_MESSAGE_ALIGNMENT                        BENCH_SUPPLY_CENTRED_ON_X
#define BENCH_SUPPLY_START_MESSAGE_INK                              BENCH_SUPPLY_INK_CHALK
#define BENCH_SUPPLY_START_MESSAGE_GROUND                           BENCH_SUPPLY_INK_NIGHT
#define BENCH_SUPPLY_START_MESSAGE_PADDING_X                        20                        /* px */
#define BENCH_SUPPLY_START_MESSAGE_PADDING_Y                        118                       /* px */
#define BENCH_SUPPLY_START_MESSAGE_PADDING_WIDTH                    280                       /* px */
#define BENCH_SUPPLY_START_MESSAGE_PADDING_HEIGHT                   24                        /* px */
#define BENCH_SUPPLY_START_MESSAGE_TEXT_BYTES                       26                        /* the text's buffer, terminator included */
#define BENCH_SUPPLY_START_MESSAGE_FORMAT                           "%s"
#define BENCH_SUPPLY_START_MESSAGE_CHOICE_TESTING_ITSELF            0                         /* "Testing itself" */
#define BENCH_SUPPLY_START_MESSAGE_CHOICE_READING_THE_CALIBRATION   1                         /* "Reading the calibration" */
#define BENCH_SUPPLY_START_MESSAGE_CHOICE_WAITING_FOR_THE_FAN       2                         /* "Waiting for the fan" */
#define BENCH_SUPPLY_START_MESSAGE_CHOICE_JOINING_THE_BENCH_NETWORK 3                         /* "Joining the bench network" */
#define BENCH_SUPPLY_START_MESSAGE_CHOICE_READY                     4                         /* "Ready" */

/* label `caution` */
#define BENCH_SUPPLY_START_CAUTION_X         160                       /* px */
#define BENCH_SUPPLY_START_CAUTION_BASELINE  220                       /* px */
#define BENCH_SUPPLY_START_CAUTION_ALIGNMENT BENCH_SUPPLY_CENTRED_ON_X
#define BENCH_SUPPLY_START_CAUTION_INK       BENCH_SUPPLY_INK_ASH
#define BENCH_SUPPLY_START_CAUTION_GROUND    BENCH_SUPPLY_INK_NIGHT
#define BENCH_SUPPLY_START_CAUTION_TEXT      "Not a safety device"

/* ---- Screen `work` ---------------------------------------------------------------------------------------------- */

#define BENCH_SUPPLY_WORK_GROUND BENCH_SUPPLY_INK_NIGHT

/* box `bar` */
#define BENCH_SUPPLY_WORK_BAR_X      0                      /* px */
#define BENCH_SUPPLY_WORK_BAR_Y      0                      /* px */
#define BENCH_SUPPLY_WORK_BAR_WIDTH  320                    /* px */
#define BENCH_SUPPLY_WORK_BAR_HEIGHT 28                     /* px */
#define BENCH_SUPPLY_WORK_BAR_FILL   BENCH_SUPPLY_INK_STEEL

/* label `title` */
#define BENCH_SUPPLY_WORK_TITLE_X         8                        /* px */
#define BENCH_SUPPLY_WORK_TITLE_BASELINE  21                       /* px */
#define BENCH_SUPPLY_WORK_TITLE_ALIGNMENT BENCH_SUPPLY_STARTS_AT_X
#define BENCH_SUPPLY_WORK_TITLE_INK       BENCH_SUPPLY_INK_CHALK
#define BENCH_SUPPLY_WORK_TITLE_GROUND    BENCH_SUPPLY_INK_STEEL
#define BENCH_SUPPLY_WORK_TITLE_TEXT      "Bench supply"

/* icon `network`, clearing: pad */
#define BENCH_SUPPLY_WORK_NETWORK_X              264                         /* px */
#define BENCH_SUPPLY_WORK_NETWORK_Y              2                           /* px */
#define BENCH_SUPPLY_WORK_NETWORK_INK            BENCH_SUPPLY_INK_CHALK
#define BENCH_SUPPLY_WORK_NETWORK_GROUND         BENCH_SUPPLY_INK_STEEL
#define BENCH_SUPPLY_WORK_NETWORK_PADDING_X      BENCH_SUPPLY_WORK_NETWORK_X /* px */
#define BENCH_SUPPLY_WORK_NETWORK_PADDING_Y      BENCH_SUPPLY_WORK_NETWORK_Y /* px */
#define BENCH_SUPPLY_WORK_NETWORK_PADDING_WIDTH  24                          /* px */
#define BENCH_SUPPLY_WORK_NETWORK_PADDING_HEIGHT 24                          /* px */
#define BENCH_SUPPLY_WORK_NETWORK_STATE_OFF      0
#define BENCH_SUPPLY_WORK_NETWORK_STATE_TRYING_1 1
#define BENCH_SUPPLY_WORK_NETWORK_STATE_TRYING_2 2
#define BENCH_SUPPLY_WORK_NETWORK_STATE_TRYING_3 3
#define BENCH_SUPPLY_WORK_NETWORK_STATE_UP       4
#define BENCH_SUPPLY_WORK_NETWORK_STATE_FAULT    5
#define BENCH_SUPPLY_WORK_NETWORK_STATES         6

/* icon `keys`, clearing: pad */
#define BENCH_SUPPLY_WORK_KEYS_X              292                      /* px */
#define BENCH_SUPPLY_WORK_KEYS_Y              2                        /* px */
#define BENCH_SUPPLY_WORK_KEYS_INK            BENCH_SUPPLY_INK_CHALK
#define BENCH_SUPPLY_WORK_KEYS_GROUND         BENCH_SUPPLY_INK_STEEL
#define BENCH_SUPPLY_WORK_KEYS_PADDING_X      BENCH_SUPPLY_WORK_KEYS_X /* px */
#define BENCH_SUPPLY_WORK_KEYS_PADDING_Y      BENCH_SUPPLY_WORK_KEYS_Y /* px */
#define BENCH_SUPPLY_WORK_KEYS_PADDING_WIDTH  24                       /* px */
#define BENCH_SUPPLY_WORK_KEYS_PADDING_HEIGHT 24                       /* px */
#define BENCH_SUPPLY_WORK_KEYS_STATE_OFF      0
#define BENCH_SUPPLY_WORK_KEYS_STATE_UP       1
#define BENCH_SUPPLY_WORK_KEYS_STATE_FAULT    2
#define BENCH_SUPPLY_WORK_KEYS_STATES         3

/* field `volts`, clearing: pad */
#define BENCH_SUPPLY_WORK_VOLTS_X              268                    /* px */
#define BENCH_SUPPLY_WORK_VOLTS_BASELINE       100                    /* px */
#define BENCH_SUPPLY_WORK_VOLTS_ALIGNMENT      BENCH_SUPPLY_ENDS_AT_X
#define BENCH_SUPPLY_WORK_VOLTS_INK            BENCH_SUPPLY_INK_VOLT
#define BENCH_SUPPLY_WORK_VOLTS_GROUND         BENCH_SUPPLY_INK_NIGHT
#define BENCH_SUPPLY_WORK_VOLTS_PADDING_X      20                     /* px */
#define BENCH_SUPPLY_WORK_VOLTS_PADDING_Y      42                     /* px */
#define BENCH_SUPPLY_WORK_VOLTS_PADDING_WIDTH  250                    /* px */
#define BENCH_SUPPLY_WORK_VOLTS_PADDING_HEIGHT 60                     /* px */
#define BENCH_SUPPLY_WORK_VOLTS_TEXT_BYTES     7                      /* the text's buffer, terminator included */
#define BENCH_SUPPLY_WORK_VOLTS_FORMAT         "%.3f"
#define BENCH_SUPPLY_WORK_VOLTS_LEAST          0.0
#define BENCH_SUPPLY_WORK_VOLTS_GREATEST       32.0
#define BENCH_SUPPLY_WORK_VOLTS_FAULT          "--.---"
#define BENCH_SUPPLY_WORK_VOLTS_FIRST          "--.---"

/* label `volt` */
#define BENCH_SUPPLY_WORK_VOLT_X         278                      /* px */
#define BENCH_SUPPLY_WORK_VOLT_BASELINE  100                      /* px */
#define BENCH_SUPPLY_WORK_VOLT_ALIGNMENT BENCH_SUPPLY_STARTS_AT_X
#define BENCH_SUPPLY_WORK_VOLT_INK       BENCH_SUPPLY_INK_VOLT
#define BENCH_SUPPLY_WORK_VOLT_GROUND    BENCH_SUPPLY_INK_NIGHT
#define BENCH_SUPPLY_WORK_VOLT_TEXT      "V"

/* field `mode`, clearing: pad */
#define BENCH_SUPPLY_WORK_MODE_X              12                       /* px */
#define BENCH_SUPPLY_WORK_MODE_BASELINE       160                      /* px */
#define BENCH_SUPPLY_WORK_MODE_ALIGNMENT      BENCH_SUPPLY_STARTS_AT_X
#define BENCH_SUPPLY_WORK_MODE_INK            BENCH_SUPPLY_INK_CHALK
#define BENCH_SUPPLY_WORK_MODE_GROUND         BENCH_SUPPLY_INK_NIGHT
#define BENCH_SUPPLY_WORK_MODE_PADDING_X      10                       /* px */
#define BENCH_SUPPLY_WORK_MODE_PADDING_Y      134                      /* px */
#define BENCH_SUPPLY_WORK_MODE_PADDING_WIDTH  76                       /* px */
#define BENCH_SUPPLY_WORK_MODE_PADDING_HEIGHT 30                       /* px */
#define BENCH_SUPPLY_WORK_MODE_TEXT_BYTES     4                        /* the text's buffer, terminator included */
#define BENCH_SUPPLY_WORK_MODE_FORMAT         "%s"
#define BENCH_SUPPLY_WORK_MODE_CHOICE_CV      0                        /* "CV" */
#define BENCH_SUPPLY_WORK_MODE_CHOICE_CC      1                        /* "CC" */
#define BENCH_SUPPLY_WORK_MODE_CHOICE_OFF     2                        /* "off" */

/* field `amps`, clearing: pad */
#define BENCH_SUPPLY_WORK_AMPS_X              268                    /* px */
#define BENCH_SUPPLY_WORK_AMPS_BASELINE       160                    /* px */
#define BENCH_SUPPLY_WORK_AMPS_ALIGNMENT      BENCH_SUPPLY_ENDS_AT_X
#define BENCH_SUPPLY_WORK_AMPS_INK            BENCH_SUPPLY_INK_AMP
#define BENCH_SUPPLY_WORK_AMPS_GROUND         BENCH_SUPPLY_INK_NIGHT
#define BENCH_SUPPLY_WORK_AMPS_PADDING_X      110                    /* px */
#define BENCH_SUPPLY_WORK_AMPS_PADDING_Y      116                    /* px */
#define BENCH_SUPPLY_WORK_AMPS_PADDING_WIDTH  160                    /* px */
#define BENCH_SUPPLY_WORK_AMPS_PADDING_HEIGHT 46                     /* px */
#define BENCH_SUPPLY_WORK_AMPS_TEXT_BYTES     6                      /* the text's buffer, terminator included */
#define BENCH_SUPPLY_WORK_AMPS_FORMAT         "%.3f"
#define BENCH_SUPPLY_WORK_AMPS_LEAST          0.0
#define BENCH_SUPPLY_WORK_AMPS_GREATEST       3.2
#define BENCH_SUPPLY_WORK_AMPS_FAULT          "-.---"
#define BENCH_SUPPLY_WORK_AMPS_FIRST          "-.---"

/* label `ampere` */
#define BENCH_SUPPLY_WORK_AMPERE_X         278                      /* px */
#define BENCH_SUPPLY_WORK_AMPERE_BASELINE  160                      /* px */
#define BENCH_SUPPLY_WORK_AMPERE_ALIGNMENT BENCH_SUPPLY_STARTS_AT_X
#define BENCH_SUPPLY_WORK_AMPERE_INK       BENCH_SUPPLY_INK_AMP
#define BENCH_SUPPLY_WORK_AMPERE_GROUND    BENCH_SUPPLY_INK_NIGHT
#define BENCH_SUPPLY_WORK_AMPERE_TEXT      "A"

/* rule `line` */
#define BENCH_SUPPLY_WORK_LINE_X         8                      /* px */
#define BENCH_SUPPLY_WORK_LINE_Y         174                    /* px */
#define BENCH_SUPPLY_WORK_LINE_LENGTH    304                    /* px across */
#define BENCH_SUPPLY_WORK_LINE_THICKNESS 1                      /* px */
#define BENCH_SUPPLY_WORK_LINE_INK       BENCH_SUPPLY_INK_STEEL

/* label `set-word` */
#define BENCH_SUPPLY_WORK_SET_WORD_X         12                       /* px */
#define BENCH_SUPPLY_WORK_SET_WORD_BASELINE  200                      /* px */
#define BENCH_SUPPLY_WORK_SET_WORD_ALIGNMENT BENCH_SUPPLY_STARTS_AT_X
#define BENCH_SUPPLY_WORK_SET_WORD_INK       BENCH_SUPPLY_INK_ASH
#define BENCH_SUPPLY_WORK_SET_WORD_GROUND    BENCH_SUPPLY_INK_NIGHT
#define BENCH_SUPPLY_WORK_SET_WORD_TEXT      "Set"

/* field `set-volts`, clearing: pad */
#define BENCH_SUPPLY_WORK_SET_VOLTS_X              144                    /* px */
#define BENCH_SUPPLY_WORK_SET_VOLTS_BASELINE       200                    /* px */
#define BENCH_SUPPLY_WORK_SET_VOLTS_ALIGNMENT      BENCH_SUPPLY_ENDS_AT_X
#define BENCH_SUPPLY_WORK_SET_VOLTS_INK            BENCH_SUPPLY_INK_CHALK
#define BENCH_SUPPLY_WORK_SET_VOLTS_GROUND         BENCH_SUPPLY_INK_NIGHT
#define BENCH_SUPPLY_WORK_SET_VOLTS_PADDING_X      72                     /* px */
#define BENCH_SUPPLY_WORK_SET_VOLTS_PADDING_Y      182                    /* px */
#define BENCH_SUPPLY_WORK_SET_VOLTS_PADDING_WIDTH  74                     /* px */
#define BENCH_SUPPLY_WORK_SET_VOLTS_PADDING_HEIGHT 22                     /* px */
#define BENCH_SUPPLY_WORK_SET_VOLTS_TEXT_BYTES     6                      /* the text's buffer, terminator included */
#define BENCH_SUPPLY_WORK_SET_VOLTS_FORMAT         "%.2f"
#define BENCH_SUPPLY_WORK_SET_VOLTS_LEAST          0.0
#define BENCH_SUPPLY_WORK_SET_VOLTS_GREATEST       32.0
#define BENCH_SUPPLY_WORK_SET_VOLTS_FAULT          "--.--"

/* label `set-volt` */
#define BENCH_SUPPLY_WORK_SET_VOLT_X         152                      /* px */
#define BENCH_SUPPLY_WORK_SET_VOLT_BASELINE  200                      /* px */
#define BENCH_SUPPLY_WORK_SET_VOLT_ALIGNMENT BENCH_SUPPLY_STARTS_AT_X
#define BENCH_SUPPLY_WORK_SET_VOLT_INK       BENCH_SUPPLY_INK_ASH
#define BENCH_SUPPLY_WORK_SET_VOLT_GROUND    BENCH_SUPPLY_INK_NIGHT
#define BENCH_SUPPLY_WORK_SET_VOLT_TEXT      "V"

/* field `set-amps`, clearing: pad */
#define BENCH_SUPPLY_WORK_SET_AMPS_X              268                    /* px */
#define BENCH_SUPPLY_WORK_SET_AMPS_BASELINE       200                    /* px */
#define BENCH_SUPPLY_WORK_SET_AMPS_ALIGNMENT      BENCH_SUPPLY_ENDS_AT_X
#define BENCH_SUPPLY_WORK_SET_AMPS_INK            BENCH_SUPPLY_INK_CHALK
#define BENCH_SUPPLY_WORK_SET_AMPS_GROUND         BENCH_SUPPLY_INK_NIGHT
#define BENCH_SUPPLY_WORK_SET_AMPS_PADDING_X      200                    /* px */
#define BENCH_SUPPLY_WORK_SET_AMPS_PADDING_Y      182                    /* px */
#define BENCH_SUPPLY_WORK_SET_AMPS_PADDING_WIDTH  70                     /* px */
#define BENCH_SUPPLY_WORK_SET_AMPS_PADDING_HEIGHT 22                     /* px */
#define BENCH_SUPPLY_WORK_SET_AMPS_TEXT_BYTES     6                      /* the text's buffer, terminator included */
#define BENCH_SUPPLY_WORK_SET_AMPS_FORMAT         "%.3f"
#define BENCH_SUPPLY_WORK_SET_AMPS_LEAST          0.0
#define BENCH_SUPPLY_WORK_SET_AMPS_GREATEST       3.2
#define BENCH_SUPPLY_WORK_SET_AMPS_FAULT          "-.---"

/* label `set-ampere` */
#define BENCH_SUPPLY_WORK_SET_AMPERE_X         278                      /* px */
#define BENCH_SUPPLY_WORK_SET_AMPERE_BASELINE  200                      /* px */
#define BENCH_SUPPLY_WORK_SET_AMPERE_ALIGNMENT BENCH_SUPPLY_STARTS_AT_X
#define BENCH_SUPPLY_WORK_SET_AMPERE_INK       BENCH_SUPPLY_INK_ASH
#define BENCH_SUPPLY_WORK_SET_AMPERE_GROUND    BENCH_SUPPLY_INK_NIGHT
#define BENCH_SUPPLY_WORK_SET_AMPERE_TEXT      "A"

/* label `out-word` */
#define BENCH_SUPPLY_WORK_OUT_WORD_X         12                       /* px */
#define BENCH_SUPPLY_WORK_OUT_WORD_BASELINE  228                      /* px */
#define BENCH_SUPPLY_WORK_OUT_WORD_ALIGNMENT BENCH_SUPPLY_STARTS_AT_X
#define BENCH_SUPPLY_WORK_OUT_WORD_INK       BENCH_SUPPLY_INK_ASH
#define BENCH_SUPPLY_WORK_OUT_WORD_GROUND    BENCH_SUPPLY_INK_NIGHT
#define BENCH_SUPPLY_WORK_OUT_WORD_TEXT      "Out"

/* field `watts`, clearing: pad */
#define BENCH_SUPPLY_WORK_WATTS_X              144                    /* px */
#define BENCH_SUPPLY_WORK_WATTS_BASELINE       228                    /* px */
#define BENCH_SUPPLY_WORK_WATTS_ALIGNMENT      BENCH_SUPPLY_ENDS_AT_X
#define BENCH_SUPPLY_WORK_WATTS_INK            BENCH_SUPPLY_INK_CHALK
#define BENCH_SUPPLY_WORK_WATTS_GROUND         BENCH_SUPPLY_INK_NIGHT
#define BENCH_SUPPLY_WORK_WATTS_PADDING_X      72                     /* px */
#define BENCH_SUPPLY_WORK_WATTS_PADDING_Y      210                    /* px */
#define BENCH_SUPPLY_WORK_WATTS_PADDING_WIDTH  74                     /* px */
#define BENCH_SUPPLY_WORK_WATTS_PADDING_HEIGHT 22                     /* px */
#define BENCH_SUPPLY_WORK_WATTS_TEXT_BYTES     6                      /* the text's buffer, terminator included */
#define BENCH_SUPPLY_WORK_WATTS_FORMAT         "%.1f"
#define BENCH_SUPPLY_WORK_WATTS_LEAST          0.0
#define BENCH_SUPPLY_WORK_WATTS_GREATEST       102.4
#define BENCH_SUPPLY_WORK_WATTS_FAULT          "--.-"
#define BENCH_SUPPLY_WORK_WATTS_FIRST          "--.-"

/* label `watt` */
#define BENCH_SUPPLY_WORK_WATT_X         152                      /* px */
#define BENCH_SUPPLY_WORK_WATT_BASELINE  228                      /* px */
#define BENCH_SUPPLY_WORK_WATT_ALIGNMENT BENCH_SUPPLY_STARTS_AT_X
#define BENCH_SUPPLY_WORK_WATT_INK       BENCH_SUPPLY_INK_ASH
#define BENCH_SUPPLY_WORK_WATT_GROUND    BENCH_SUPPLY_INK_NIGHT
#define BENCH_SUPPLY_WORK_WATT_TEXT      "W"

/* field `sink`, clearing: pad */
#define BENCH_SUPPLY_WORK_SINK_X              268                    /* px */
#define BENCH_SUPPLY_WORK_SINK_BASELINE       228                    /* px */
#define BENCH_SUPPLY_WORK_SINK_ALIGNMENT      BENCH_SUPPLY_ENDS_AT_X
#define BENCH_SUPPLY_WORK_SINK_INK            BENCH_SUPPLY_INK_CHALK
#define BENCH_SUPPLY_WORK_SINK_GROUND         BENCH_SUPPLY_INK_NIGHT
#define BENCH_SUPPLY_WORK_SINK_PADDING_X      230                    /* px */
#define BENCH_SUPPLY_WORK_SINK_PADDING_Y      210                    /* px */
#define BENCH_SUPPLY_WORK_SINK_PADDING_WIDTH  40                     /* px */
#define BENCH_SUPPLY_WORK_SINK_PADDING_HEIGHT 22                     /* px */
#define BENCH_SUPPLY_WORK_SINK_TEXT_BYTES     4                      /* the text's buffer, terminator included */
#define BENCH_SUPPLY_WORK_SINK_FORMAT         "%d"
#define BENCH_SUPPLY_WORK_SINK_LEAST          (-20)
#define BENCH_SUPPLY_WORK_SINK_GREATEST       125
#define BENCH_SUPPLY_WORK_SINK_FAULT          "--"
#define BENCH_SUPPLY_WORK_SINK_FIRST          "--"

/* label `sink-word` */
#define BENCH_SUPPLY_WORK_SINK_WORD_X         180                      /* px */
#define BENCH_SUPPLY_WORK_SINK_WORD_BASELINE  228                      /* px */
#define BENCH_SUPPLY_WORK_SINK_WORD_ALIGNMENT BENCH_SUPPLY_STARTS_AT_X
#define BENCH_SUPPLY_WORK_SINK_WORD_INK       BENCH_SUPPLY_INK_ASH
#define BENCH_SUPPLY_WORK_SINK_WORD_GROUND    BENCH_SUPPLY_INK_NIGHT
#define BENCH_SUPPLY_WORK_SINK_WORD_TEXT      "Sink"

/* label `degree` */
#define BENCH_SUPPLY_WORK_DEGREE_X         278                      /* px */
#define BENCH_SUPPLY_WORK_DEGREE_BASELINE  228                      /* px */
#define BENCH_SUPPLY_WORK_DEGREE_ALIGNMENT BENCH_SUPPLY_STARTS_AT_X
#define BENCH_SUPPLY_WORK_DEGREE_INK       BENCH_SUPPLY_INK_ASH
#define BENCH_SUPPLY_WORK_DEGREE_GROUND    BENCH_SUPPLY_INK_NIGHT
#define BENCH_SUPPLY_WORK_DEGREE_TEXT      "\302\260C"

/* ---- Screen `fault` --------------------------------------------------------------------------------------------- */

#define BENCH_SUPPLY_FAULT_GROUND BENCH_SUPPLY_INK_NIGHT

/* box `banner` */
#define BENCH_SUPPLY_FAULT_BANNER_X      0                      /* px */
#define BENCH_SUPPLY_FAULT_BANNER_Y      0                      /* px */
#define BENCH_SUPPLY_FAULT_BANNER_WIDTH  320                    /* px */
#define BENCH_SUPPLY_FAULT_BANNER_HEIGHT 60                     /* px */
#define BENCH_SUPPLY_FAULT_BANNER_FILL   BENCH_SUPPLY_INK_ALARM

/* label `title` */
#define BENCH_SUPPLY_FAULT_TITLE_X         160                       /* px */
#define BENCH_SUPPLY_FAULT_TITLE_BASELINE  42                        /* px */
#define BENCH_SUPPLY_FAULT_TITLE_ALIGNMENT BENCH_SUPPLY_CENTRED_ON_X
#define BENCH_SUPPLY_FAULT_TITLE_INK       BENCH_SUPPLY_INK_CHALK
#define BENCH_SUPPLY_FAULT_TITLE_GROUND    BENCH_SUPPLY_INK_ALARM
#define BENCH_SUPPLY_FAULT_TITLE_TEXT      "Output is off"

/* field `reason`, clearing: pad */
#define BENCH_SUPPLY_FAULT_REASON_X                           160                       /* px */
#define BENCH_SUPPLY_FAULT_REASON_BASELINE                    112                       /* px */
#define BENCH_SUPPLY_FAULT_REASON_ALIGNMENT                   BENCH_SUPPLY_CENTRED_ON_X
#define BENCH_SUPPLY_FAULT_REASON_INK                         BENCH_SUPPLY_INK_CHALK
#define BENCH_SUPPLY_FAULT_REASON_GROUND                      BENCH_SUPPLY_INK_NIGHT
#define BENCH_SUPPLY_FAULT_REASON_PADDING_X                   10                        /* px */
#define BENCH_SUPPLY_FAULT_REASON_PADDING_Y                   94                        /* px */
#define BENCH_SUPPLY_FAULT_REASON_PADDING_WIDTH               300                       /* px */
#define BENCH_SUPPLY_FAULT_REASON_PADDING_HEIGHT              26                        /* px */
#define BENCH_SUPPLY_FAULT_REASON_TEXT_BYTES                  21                        /* the text's buffer, terminator included */
#define BENCH_SUPPLY_FAULT_REASON_FORMAT                      "%s"
#define BENCH_SUPPLY_FAULT_REASON_CHOICE_TOO_MUCH_CURRENT     0                         /* "Too much current" */
#define BENCH_SUPPLY_FAULT_REASON_CHOICE_TOO_HOT              1                         /* "Too hot" */
#define BENCH_SUPPLY_FAULT_REASON_CHOICE_VOLTAGE_FROM_OUTSIDE 2                         /* "Voltage from outside" */
#define BENCH_SUPPLY_FAULT_REASON_CHOICE_MAINS_TOO_LOW        3                         /* "Mains too low" */
#define BENCH_SUPPLY_FAULT_REASON_CHOICE_FAN_STANDS_STILL     4                         /* "Fan stands still" */

/* label `at-word` */
#define BENCH_SUPPLY_FAULT_AT_WORD_X         92                       /* px */
#define BENCH_SUPPLY_FAULT_AT_WORD_BASELINE  160                      /* px */
#define BENCH_SUPPLY_FAULT_AT_WORD_ALIGNMENT BENCH_SUPPLY_STARTS_AT_X
#define BENCH_SUPPLY_FAULT_AT_WORD_INK       BENCH_SUPPLY_INK_ASH
#define BENCH_SUPPLY_FAULT_AT_WORD_GROUND    BENCH_SUPPLY_INK_NIGHT
#define BENCH_SUPPLY_FAULT_AT_WORD_TEXT      "At"

/* field `at-volts`, clearing: pad */
#define BENCH_SUPPLY_FAULT_AT_VOLTS_X              226                    /* px */
#define BENCH_SUPPLY_FAULT_AT_VOLTS_BASELINE       160                    /* px */
#define BENCH_SUPPLY_FAULT_AT_VOLTS_ALIGNMENT      BENCH_SUPPLY_ENDS_AT_X
#define BENCH_SUPPLY_FAULT_AT_VOLTS_INK            BENCH_SUPPLY_INK_CHALK
#define BENCH_SUPPLY_FAULT_AT_VOLTS_GROUND         BENCH_SUPPLY_INK_NIGHT
#define BENCH_SUPPLY_FAULT_AT_VOLTS_PADDING_X      130                    /* px */
#define BENCH_SUPPLY_FAULT_AT_VOLTS_PADDING_Y      142                    /* px */
#define BENCH_SUPPLY_FAULT_AT_VOLTS_PADDING_WIDTH  98                     /* px */
#define BENCH_SUPPLY_FAULT_AT_VOLTS_PADDING_HEIGHT 22                     /* px */
#define BENCH_SUPPLY_FAULT_AT_VOLTS_TEXT_BYTES     8                      /* the text's buffer, terminator included */
#define BENCH_SUPPLY_FAULT_AT_VOLTS_FORMAT         "%.2f V"
#define BENCH_SUPPLY_FAULT_AT_VOLTS_LEAST          0.0
#define BENCH_SUPPLY_FAULT_AT_VOLTS_GREATEST       40.0
#define BENCH_SUPPLY_FAULT_AT_VOLTS_FAULT          "--.-- V"

/* label `advice` */
#define BENCH_SUPPLY_FAULT_ADVICE_X         160                              /* px */
#define BENCH_SUPPLY_FAULT_ADVICE_BASELINE  220                              /* px */
#define BENCH_SUPPLY_FAULT_ADVICE_ALIGNMENT BENCH_SUPPLY_CENTRED_ON_X
#define BENCH_SUPPLY_FAULT_ADVICE_INK       BENCH_SUPPLY_INK_ASH
#define BENCH_SUPPLY_FAULT_ADVICE_GROUND    BENCH_SUPPLY_INK_NIGHT
#define BENCH_SUPPLY_FAULT_ADVICE_TEXT      "Unload it, then press the knob"

/* ---- Functions --------------------------------------------------------------------------------------------- */

/* How pixels reach the glass. `window` sets a rectangle; the runs after it fill it exactly, row by row from its top
   left corner, each run being `count` pixels of one colour, which may go on into the next row. */
typedef struct bench_supply_port {
    void (*window)(void *context, uint16_t x, uint16_t y, uint16_t width, uint16_t height);
    void (*run)(void *context, uint16_t colour, uint32_t count);
    void *context;
} bench_supply_port;

/* What the screen `start` shows: UTF-8 texts (NULL is an empty one). */
typedef struct bench_supply_start_values {
    const char *message;
} bench_supply_start_values;

/* What the screen `work` shows: UTF-8 texts (NULL is an empty one), and icons' states. */
typedef struct bench_supply_work_values {
    uint8_t network;       /* one of BENCH_SUPPLY_WORK_NETWORK_STATE_... */
    uint8_t keys;          /* one of BENCH_SUPPLY_WORK_KEYS_STATE_... */
    const char *volts;
    const char *mode;
    const char *amps;
    const char *set_volts;
    const char *set_amps;
    const char *watts;
    const char *sink;
} bench_supply_work_values;

/* What the screen `fault` shows: UTF-8 texts (NULL is an empty one). */
typedef struct bench_supply_fault_values {
    const char *reason;
    const char *at_volts;
} bench_supply_fault_values;

#ifdef __cplusplus
extern "C" {
#endif

/* Draw a whole screen, or bring one field or icon up to date. Of a text longer than any that the field can show, the
   bytes beyond that length are not read. A state that an icon does not have paints nothing. */
void bench_supply_start_draw(const bench_supply_port *port, const bench_supply_start_values *values);
void bench_supply_start_message_update(const bench_supply_port *port, const char *text);
void bench_supply_work_draw(const bench_supply_port *port, const bench_supply_work_values *values);
void bench_supply_work_network_update(const bench_supply_port *port, uint8_t state);
void bench_supply_work_keys_update(const bench_supply_port *port, uint8_t state);
void bench_supply_work_volts_update(const bench_supply_port *port, const char *text);
void bench_supply_work_mode_update(const bench_supply_port *port, const char *text);
void bench_supply_work_amps_update(const bench_supply_port *port, const char *text);
void bench_supply_work_set_volts_update(const bench_supply_port *port, const char *text);
void bench_supply_work_set_amps_update(const bench_supply_port *port, const char *text);
void bench_supply_work_watts_update(const bench_supply_port *port, const char *text);
void bench_supply_work_sink_update(const bench_supply_port *port, const char *text);
void bench_supply_fault_draw(const bench_supply_port *port, const bench_supply_fault_values *values);
void bench_supply_fault_reason_update(const bench_supply_port *port, const char *text);
void bench_supply_fault_at_volts_update(const bench_supply_port *port, const char *text);

#ifndef BENCH_SUPPLY_NO_CHANGES
/* The same, of a part that shows `former` already: only pixels that differ are sent, with a few others where that takes
   fewer bytes. Give the very text or state that was drawn last; NULL, or a state that there is none of, where that is
   not known, and all is drawn. */
void bench_supply_start_message_change(const bench_supply_port *port, const char *former, const char *text);
void bench_supply_work_network_change(const bench_supply_port *port, uint8_t former, uint8_t state);
void bench_supply_work_keys_change(const bench_supply_port *port, uint8_t former, uint8_t state);
void bench_supply_work_volts_change(const bench_supply_port *port, const char *former, const char *text);
void bench_supply_work_mode_change(const bench_supply_port *port, const char *former, const char *text);
void bench_supply_work_amps_change(const bench_supply_port *port, const char *former, const char *text);
void bench_supply_work_set_volts_change(const bench_supply_port *port, const char *former, const char *text);
void bench_supply_work_set_amps_change(const bench_supply_port *port, const char *former, const char *text);
void bench_supply_work_watts_change(const bench_supply_port *port, const char *former, const char *text);
void bench_supply_work_sink_change(const bench_supply_port *port, const char *former, const char *text);
void bench_supply_fault_reason_change(const bench_supply_port *port, const char *former, const char *text);
void bench_supply_fault_at_volts_change(const bench_supply_port *port, const char *former, const char *text);
#endif

#ifndef BENCH_SUPPLY_NO_TEXT_FUNCTIONS
/* Write the text of a field into a buffer of its ..._TEXT_BYTES and return its bytes, terminator not counted. A value
   outside what the proof covers, or not a number, gives the text named behind `else`. Where a field has none the
   result is -1 and the buffer is as it was: do not update the field then.
   Those called ..._scaled take a real as a whole number of its last places: 1234 for 123.4. Where a double has
   32 bits only, the others show the nearest number that it can hold. */

/* choice: 0 to 4, one of BENCH_SUPPLY_START_MESSAGE_CHOICE_...; else -1, the buffer untouched */
int bench_supply_start_message_text(char *buffer, int choice);

/* value: 0.0 to 32.0; else BENCH_SUPPLY_WORK_VOLTS_FAULT */
int bench_supply_work_volts_text(char *buffer, double value);

/* scaled: 0 to 32000, in steps of 0.001; else BENCH_SUPPLY_WORK_VOLTS_FAULT */
int bench_supply_work_volts_text_scaled(char *buffer, int32_t scaled);

/* choice: 0 to 2, one of BENCH_SUPPLY_WORK_MODE_CHOICE_...; else -1, the buffer untouched */
int bench_supply_work_mode_text(char *buffer, int choice);

/* value: 0.0 to 3.2; else BENCH_SUPPLY_WORK_AMPS_FAULT */
int bench_supply_work_amps_text(char *buffer, double value);

/* scaled: 0 to 3200, in steps of 0.001; else BENCH_SUPPLY_WORK_AMPS_FAULT */
int bench_supply_work_amps_text_scaled(char *buffer, int32_t scaled);

/* value: 0.0 to 32.0; else BENCH_SUPPLY_WORK_SET_VOLTS_FAULT */
int bench_supply_work_set_volts_text(char *buffer, double value);

/* scaled: 0 to 3200, in steps of 0.01; else BENCH_SUPPLY_WORK_SET_VOLTS_FAULT */
int bench_supply_work_set_volts_text_scaled(char *buffer, int32_t scaled);

/* value: 0.0 to 3.2; else BENCH_SUPPLY_WORK_SET_AMPS_FAULT */
int bench_supply_work_set_amps_text(char *buffer, double value);

/* scaled: 0 to 3200, in steps of 0.001; else BENCH_SUPPLY_WORK_SET_AMPS_FAULT */
int bench_supply_work_set_amps_text_scaled(char *buffer, int32_t scaled);

/* value: 0.0 to 102.4; else BENCH_SUPPLY_WORK_WATTS_FAULT */
int bench_supply_work_watts_text(char *buffer, double value);

/* scaled: 0 to 1024, in steps of 0.1; else BENCH_SUPPLY_WORK_WATTS_FAULT */
int bench_supply_work_watts_text_scaled(char *buffer, int32_t scaled);

/* value: -20 to 125; else BENCH_SUPPLY_WORK_SINK_FAULT */
int bench_supply_work_sink_text(char *buffer, int value);

/* choice: 0 to 4, one of BENCH_SUPPLY_FAULT_REASON_CHOICE_...; else -1, the buffer untouched */
int bench_supply_fault_reason_text(char *buffer, int choice);

/* value: 0.0 to 40.0; else BENCH_SUPPLY_FAULT_AT_VOLTS_FAULT */
int bench_supply_fault_at_volts_text(char *buffer, double value);

/* scaled: 0 to 4000, in steps of 0.01; else BENCH_SUPPLY_FAULT_AT_VOLTS_FAULT */
int bench_supply_fault_at_volts_text_scaled(char *buffer, int32_t scaled);
#endif

#ifdef __cplusplus
}
#endif

#endif /* BENCH_SUPPLY_HEADER_ */

#if defined(BENCH_SUPPLY_IMPLEMENTATION) && !defined(BENCH_SUPPLY_IMPLEMENTED_)
#define BENCH_SUPPLY_IMPLEMENTED_

/* A place brought between two others; onto the panel. */
#define BENCH_SUPPLY_WITHIN_(at, least, greatest) ((at) < (least) ? (least) : (at) > (greatest) ? (greatest) : (at))
#define BENCH_SUPPLY_ACROSS_(at)                  (int16_t)BENCH_SUPPLY_WITHIN_(at, 0, BENCH_SUPPLY_PANEL_WIDTH)
#define BENCH_SUPPLY_DOWN_(at)                    (int16_t)BENCH_SUPPLY_WITHIN_(at, 0, BENCH_SUPPLY_PANEL_HEIGHT)

/* ---- Data -------------------------------------------------------------------------------------------------- */

#ifdef BENCH_SUPPLY_CONST
#define BENCH_SUPPLY_APART_ 1
#else
#define BENCH_SUPPLY_APART_          0
#define BENCH_SUPPLY_CONST           const
#define BENCH_SUPPLY_READ8(address)  (*(const uint8_t *)(address))
#define BENCH_SUPPLY_READ16(address) (*(const uint16_t *)(address))
#define BENCH_SUPPLY_READ32(address) (*(const uint32_t *)(address))
#endif

/* Bitmaps, row after row with nothing between, the first pixel in the lowest bits; 3007 bytes. */
static BENCH_SUPPLY_CONST uint8_t bench_supply_bits_[] = {
    /* reading U+002D -: 34 x 7 */
    0x05, 0xFF, 0x04, 0x00, 0x00, 0x00,
    /* reading U+002E .: 9 x 9 */
    0x03, 0x09, 0x00, 0x00, 0x00, 0x00,
    /* reading U+0030 0: 40 x 56 */
    0xE3, 0x4C, 0xFB, 0x43, 0xF9, 0x47, 0xF8, 0x49, 0xF7, 0x4B, 0xF6, 0x5D, 0xF5, 0x0F, 0x45, 0x8C,
    0x5C, 0xA4, 0xAC, 0x35, 0xEA, 0x6A, 0x93, 0x1F, 0x69, 0x92, 0x3F, 0x09, 0x26, 0xF8, 0x85, 0x16,
    0xF9, 0x95, 0x16, 0xF8, 0x87, 0x00, 0x60, 0x90, 0x7F, 0x69, 0x80, 0x9F, 0x08, 0x00, 0x00, 0x00,
    0x00, 0x00, 0x00, 0x00, 0x06, 0xF9, 0x97, 0x16, 0xF8, 0x87, 0x00, 0x60, 0x91, 0x5F, 0x69, 0x82,
    0x5F, 0x68, 0x92, 0x3F, 0x09, 0x36, 0xF9, 0x91, 0x35, 0xEA, 0x5A, 0xA4, 0xAC, 0x45, 0x8C, 0x5C,
    0xF5, 0x0F, 0x64, 0xDF, 0x74, 0xBF, 0x84, 0x9F, 0x94, 0x7F, 0xB4, 0x3F, 0xE3, 0x0C,
    /* reading U+0031 1: 32 x 56 */
    0xA3, 0x0A, 0x93, 0x3B, 0xC8, 0x30, 0xD7, 0x63, 0x0E, 0x54, 0x0F, 0x44, 0x1F, 0x40, 0xF3, 0x42,
    0xF2, 0x03, 0x15, 0x1A, 0x58, 0xA0, 0x82, 0x30, 0x8C, 0x00, 0x00, 0x00, 0x00, 0x00, 0x00, 0x00,
    0x00, 0x00, 0x00, 0x00, 0x00, 0x00, 0x00, 0x00, 0x50, 0xF0, 0x2F, 0x00, 0x00, 0x00,
    /* reading U+0032 2: 40 x 56 */
    0xD3, 0x4E, 0xF9, 0x47, 0xF7, 0x4B, 0xF6, 0x5D, 0xF4, 0x2F, 0x35, 0xFF, 0x04, 0x25, 0xAD, 0x6D,
    0xB1, 0x1F, 0x6B, 0xA1, 0x3F, 0x6A, 0x91, 0x5F, 0x69, 0x90, 0x7F, 0x09, 0x06, 0xF8, 0x89, 0x00,
    0xF5, 0x2F, 0x08, 0x50, 0xFF, 0x91, 0xF5, 0x0F, 0x49, 0xEF, 0x4A, 0xDF, 0x4A, 0xCF, 0x4B, 0xBF,
    0x4B, 0xAF, 0x4B, 0x8F, 0x4C, 0x7F, 0x4C, 0x5F, 0x4D, 0x4F, 0x4D, 0x2F, 0x4D, 0x1F, 0x4D, 0x0F,
    0x3C, 0xDD, 0xC3, 0x3D, 0xCB, 0xA3, 0x3C, 0xB9, 0x83, 0x3B, 0xB7, 0x63, 0x3A, 0xA5, 0x43, 0x3A,
    0x94, 0x33, 0x39, 0x92, 0x30, 0x82, 0x13, 0x59, 0xF0, 0xAF, 0x00, 0x00, 0x00,
    /* reading U+0033 3: 40 x 56 */
    0xD3, 0x4E, 0xFA, 0x45, 0xF8, 0x49, 0xF7, 0x4B, 0xF6, 0x5D, 0xF5, 0x0F, 0x45, 0xFF, 0x52, 0xC3,
    0xCA, 0x35, 0xEA, 0x6A, 0x93, 0x1F, 0x69, 0x92, 0x3F, 0x09, 0x26, 0xF8, 0x85, 0x00, 0x50, 0xFF,
    0x80, 0x00, 0xF4, 0x9E, 0x40, 0xDF, 0x49, 0xCF, 0x4A, 0xAF, 0x4C, 0xFE, 0x47, 0xFE, 0x46, 0xFE,
    0x45, 0xFE, 0x46, 0xFE, 0x47, 0xFE, 0x48, 0xFE, 0x49, 0xAF, 0x4D, 0xDF, 0x4B, 0xEF, 0x5A, 0xFF,
    0x90, 0xF5, 0x1F, 0x59, 0xFF, 0x82, 0x00, 0x60, 0x80, 0x9F, 0x08, 0x00, 0x06, 0xF9, 0x97, 0x16,
    0xF9, 0x95, 0x16, 0xFA, 0xA3, 0x16, 0xFB, 0xB1, 0x25, 0xAD, 0x5D, 0xF2, 0x6F, 0x35, 0xFF, 0x54,
    0xF4, 0x2F, 0x55, 0xFF, 0x40, 0xF7, 0x4B, 0xF9, 0x37, 0xED,
    /* reading U+0034 4: 40 x 56 */
    0xF4, 0x99, 0x40, 0x8F, 0x0A, 0xF4, 0xB7, 0xF4, 0xC6, 0x40, 0x5F, 0x0D, 0xF4, 0xE4, 0x50, 0x3F,
    0x0F, 0xF5, 0xF2, 0x01, 0xF5, 0xF1, 0x02, 0xF6, 0x90, 0x81, 0x50, 0x9E, 0x82, 0xD5, 0x39, 0x08,
    0xC5, 0x49, 0x08, 0xB5, 0x59, 0x08, 0xA5, 0x69, 0x58, 0x99, 0x87, 0x50, 0x98, 0x88, 0x50, 0x97,
    0x89, 0x50, 0x96, 0x8A, 0x55, 0xB9, 0x08, 0x45, 0xC9, 0x08, 0x05, 0xFF, 0x0A, 0x00, 0x00, 0x40,
    0xAF, 0x08, 0x00, 0x00, 0x00, 0x00, 0x00,
    /* reading U+0035 5: 40 x 56 */
    0x05, 0xFF, 0x06, 0x00, 0x00, 0x30, 0x80, 0x00, 0x00, 0x00, 0x00, 0x00, 0x00, 0x40, 0xF0, 0x5C,
    0xF0, 0x1F, 0x05, 0xFF, 0x53, 0xF0, 0x4F, 0x05, 0xFF, 0x55, 0xF0, 0x6F, 0x05, 0xFF, 0x47, 0xAF,
    0x4D, 0xDF, 0x4A, 0xEF, 0x5A, 0xFF, 0x90, 0xF5, 0x1F, 0x58, 0xFF, 0x91, 0xF5, 0x2F, 0x08, 0x00,
    0x00, 0x06, 0xF8, 0x89, 0x00, 0x06, 0xF9, 0x97, 0x16, 0xF8, 0x87, 0x16, 0xF9, 0x95, 0x16, 0xFA,
    0xA3, 0x26, 0xFA, 0xA1, 0x25, 0xAD, 0x5D, 0xF3, 0x4F, 0x45, 0xFF, 0x52, 0xF5, 0x0F, 0x64, 0xDF,
    0x74, 0xBF, 0x94, 0x7F, 0xD3, 0x0E,
    /* reading U+0036 6: 40 x 56 */
    0xE3, 0x4C, 0xFB, 0x43, 0xF9, 0x47, 0xF8, 0x49, 0xF7, 0x4B, 0xF6, 0x5D, 0xF5, 0x0F, 0x45, 0x8C,
    0x5C, 0xA4, 0xAC, 0x35, 0xEA, 0x6A, 0x93, 0x1F, 0x69, 0x92, 0x3F, 0x09, 0x26, 0xF8, 0x85, 0x16,
    0xF9, 0x95, 0x16, 0xF8, 0x87, 0x13, 0x08, 0x30, 0x90, 0x03, 0x58, 0x80, 0xE5, 0x06, 0x18, 0x7F,
    0x05, 0xFF, 0x53, 0xF0, 0x4F, 0x05, 0xFF, 0x55, 0xF0, 0x6F, 0x05, 0xFF, 0x67, 0xF0, 0xA0, 0x6D,
    0xC0, 0x1F, 0x6A, 0xB0, 0x3F, 0x6A, 0xA0, 0x5F, 0x69, 0x90, 0x7F, 0x68, 0x90, 0x7F, 0x69, 0x80,
    0x9F, 0x08, 0x06, 0xF9, 0x88, 0x00, 0x00, 0x06, 0xFA, 0x87, 0x60, 0xB0, 0x5F, 0x69, 0xA1, 0x5F,
    0x68, 0xB1, 0x3F, 0x69, 0xC1, 0x1F, 0x5A, 0xC2, 0xAE, 0x25, 0x9E, 0x5D, 0xF3, 0x4F, 0x45, 0xFF,
    0x52, 0xF5, 0x0F, 0x64, 0xDF, 0x74, 0xBF, 0x94, 0x7F, 0xD3, 0x0E,
    /* reading U+0037 7: 40 x 56 */
    0x05, 0xFF, 0x0A, 0x00, 0x00, 0x50, 0xFF, 0x91, 0x50, 0xFF, 0x90, 0x40, 0xEF, 0x09, 0x40, 0xDF,
    0x09, 0xF4, 0x9C, 0x40, 0xBF, 0x09, 0xF4, 0x9A, 0x00, 0xF4, 0x99, 0x40, 0x8F, 0x09, 0xF4, 0x97,
    0x40, 0x6F, 0x09, 0x40, 0x5F, 0x09, 0xF4, 0x94, 0x40, 0x3F, 0x09, 0xF4, 0x92, 0x40, 0x1F, 0x09,
    0x40, 0x0F, 0x09, 0xE3, 0x09, 0xD3, 0x09, 0xC3, 0x09, 0x30, 0x9B, 0x30, 0x9A, 0x00,
    /* reading U+0038 8: 40 x 56 */
    0xE3, 0x4C, 0xFB, 0x43, 0xF9, 0x47, 0xF7, 0x4B, 0xF6, 0x0D, 0x55, 0xFF, 0x50, 0xC4, 0xC8, 0x45,
    0xCA, 0x5A, 0x94, 0x9E, 0x36, 0xF9, 0x91, 0x60, 0x83, 0x3F, 0x08, 0x00, 0x00, 0x60, 0x93, 0x1F,
    0x09, 0x45, 0xE9, 0x59, 0xA4, 0xAC, 0x45, 0x8C, 0x5C, 0xF5, 0x0F, 0x64, 0xDF, 0x50, 0xF5, 0x0F,
    0x45, 0xFF, 0x52, 0xF3, 0x4F, 0x25, 0xFF, 0x56, 0xD2, 0xDA, 0x16, 0xFB, 0xB1, 0x16, 0xFA, 0xA3,
    0x16, 0xF9, 0x95, 0x06, 0xF9, 0x97, 0x06, 0xF8, 0x89, 0x00, 0x00, 0x00, 0x60, 0x90, 0x7F, 0x69,
    0x91, 0x5F, 0x69, 0xA1, 0x3F, 0x6A, 0xB1, 0x1F, 0x5B, 0xD2, 0xDA, 0x25, 0xFF, 0x56, 0xF3, 0x4F,
    0x45, 0xFF, 0x52, 0xF5, 0x0F, 0x74, 0xBF, 0x94, 0x7F, 0xD3, 0x0E,
    /* reading U+0039 9: 40 x 56 */
    0xD3, 0x4E, 0xF9, 0x47, 0xF7, 0x4B, 0xF6, 0x5D, 0xF5, 0x0F, 0x45, 0xFF, 0x52, 0xF3, 0x4F, 0x25,
    0x9D, 0x5E, 0xA2, 0xCE, 0x16, 0xFA, 0xC1, 0x16, 0xF9, 0xB3, 0x16, 0xF8, 0xA5, 0x06, 0xF9, 0xB5,
    0x06, 0xF8, 0xA7, 0x60, 0x80, 0x8F, 0x09, 0x00, 0x60, 0x80, 0x9F, 0x08, 0x06, 0xF9, 0x97, 0x16,
    0xF8, 0x97, 0x16, 0xF9, 0xA5, 0x16, 0xFA, 0xB3, 0x26, 0xFA, 0xC1, 0x26, 0xAD, 0x0F, 0x35, 0xFF,
    0x57, 0xF4, 0x6F, 0x55, 0xFF, 0x55, 0xF6, 0x4F, 0x75, 0xFF, 0x63, 0xF9, 0x17, 0x58, 0xED, 0x85,
    0xF5, 0x2F, 0x58, 0xFF, 0x91, 0xF5, 0x1F, 0x08, 0x60, 0x81, 0x7F, 0x68, 0x91, 0x5F, 0x69, 0x82,
    0x5F, 0x68, 0x92, 0x3F, 0x09, 0x36, 0xF9, 0x91, 0x35, 0xEA, 0x5A, 0xA4, 0xAC, 0x45, 0x8C, 0x5C,
    0xF5, 0x0F, 0x64, 0xDF, 0x74, 0xBF, 0x84, 0x9F, 0x94, 0x7F, 0xB4, 0x3F, 0xE3, 0x0C,
    /* second U+002D -: 26 x 5 */
    0x04, 0xBF, 0x00, 0x00,
    /* second U+002E .: 7 x 7 */
    0x03, 0x07, 0x00, 0x00, 0x00,
    /* second U+0030 0: 30 x 42 */
    0xA3, 0x3A, 0xE8, 0x64, 0x3F, 0x54, 0x5F, 0x44, 0x7F, 0x35, 0x69, 0x59, 0x73, 0x7A, 0x25, 0xC7,
    0x57, 0x62, 0x6E, 0x15, 0xE7, 0x67, 0x61, 0x1F, 0x06, 0x60, 0x70, 0x1F, 0x67, 0x60, 0x3F, 0x06,
    0x00, 0x00, 0x00, 0x00, 0x00, 0x00, 0x06, 0xF7, 0x71, 0x16, 0xF6, 0x61, 0x00, 0x15, 0xE7, 0x57,
    0x62, 0x6E, 0x25, 0xC7, 0x57, 0x73, 0x7A, 0x35, 0x69, 0x49, 0xF4, 0x47, 0xF5, 0x45, 0xF6, 0x33,
    0xE8, 0xA3, 0x0A,
    /* second U+0031 1: 24 x 42 */
    0x73, 0x08, 0x63, 0x39, 0xA5, 0x30, 0xB4, 0x30, 0xC3, 0x23, 0x0D, 0x13, 0x5E, 0x80, 0x61, 0x30,
    0x69, 0x00, 0x00, 0x00, 0x00, 0x00, 0x00, 0x00, 0x00, 0x00, 0x00, 0x00, 0x40, 0xF0, 0x09, 0x00,
    0x00,
    /* second U+0032 2: 30 x 42 */
    0x93, 0x4C, 0xF6, 0x43, 0xF4, 0x47, 0xF3, 0x49, 0xF2, 0x5B, 0x92, 0x98, 0x15, 0xC8, 0x58, 0x71,
    0x7E, 0x06, 0xF7, 0x71, 0x06, 0xF6, 0x63, 0x00, 0xF4, 0x69, 0x00, 0xF4, 0x78, 0xF4, 0x77, 0xF4,
    0x76, 0xF4, 0x85, 0xF4, 0x93, 0xF4, 0x92, 0xF4, 0xA0, 0xE3, 0x39, 0x9D, 0xB3, 0x39, 0x9A, 0x93,
    0x39, 0x97, 0x63, 0x39, 0x85, 0x43, 0x38, 0x74, 0x33, 0x37, 0x72, 0x23, 0x36, 0x71, 0x13, 0x56,
    0xF0, 0x0F, 0x00, 0x00,
    /* second U+0033 3: 30 x 42 */
    0xA3, 0x4A, 0xF7, 0x41, 0xF5, 0x45, 0xF4, 0x07, 0x35, 0x88, 0x58, 0x73, 0x7A, 0x25, 0xC7, 0x57,
    0x62, 0x6E, 0x00, 0x40, 0x7F, 0x06, 0x40, 0x6F, 0x47, 0x5F, 0x47, 0x4F, 0x48, 0xFB, 0x00, 0x40,
    0xFB, 0x41, 0xFB, 0x42, 0x4F, 0x4A, 0x7F, 0x47, 0x8F, 0x46, 0x8F, 0x47, 0x9F, 0x06, 0x60, 0x60,
    0x3F, 0x06, 0x60, 0x70, 0x1F, 0x67, 0x61, 0x1F, 0x56, 0x71, 0x7E, 0x15, 0x8A, 0x4A, 0xF2, 0x4B,
    0xF3, 0x49, 0xF4, 0x47, 0xF6, 0x33, 0xC9,
    /* second U+0034 4: 30 x 42 */
    0xF4, 0x73, 0x40, 0x2F, 0x48, 0x1F, 0x09, 0xF4, 0xA0, 0x30, 0xBE, 0x30, 0xCD, 0xC3, 0x0D, 0xB5,
    0x17, 0x06, 0xA5, 0x27, 0x06, 0x95, 0x37, 0x56, 0x78, 0x64, 0x50, 0x77, 0x65, 0x50, 0x76, 0x66,
    0x50, 0x75, 0x67, 0x45, 0x87, 0x06, 0x35, 0x97, 0x06, 0x05, 0xFF, 0x00, 0x00, 0x40, 0x4F, 0x06,
    0x00, 0x00, 0x00, 0x00,
    /* second U+0035 5: 30 x 42 */
    0x04, 0xCF, 0x00, 0x00, 0x03, 0x06, 0x00, 0x00, 0x00, 0x00, 0x40, 0xF0, 0x46, 0xF0, 0x49, 0xF0,
    0x4B, 0xF0, 0x4C, 0xF0, 0x4D, 0x4F, 0x49, 0x6F, 0x48, 0x7F, 0x47, 0x8F, 0x47, 0x9F, 0x06, 0x00,
    0x60, 0x60, 0x3F, 0x06, 0x60, 0x70, 0x1F, 0x57, 0x71, 0x7E, 0x15, 0xC8, 0x58, 0x92, 0x98, 0x24,
    0xBF, 0x34, 0x9F, 0x44, 0x7F, 0x64, 0x3F, 0x93, 0x0C,
    /* second U+0036 6: 30 x 42 */
    0xA3, 0x3A, 0xE8, 0x64, 0x3F, 0x54, 0x5F, 0x44, 0x7F, 0x35, 0x69, 0x59, 0x73, 0x7A, 0x25, 0xC7,
    0x57, 0x62, 0x6E, 0x15, 0xE7, 0x67, 0x61, 0x1F, 0x06, 0x13, 0x36, 0x70, 0x03, 0x06, 0x05, 0x36,
    0x4C, 0xF0, 0x49, 0xF0, 0x4B, 0xF0, 0x4C, 0xF0, 0x5D, 0xB0, 0x98, 0x05, 0xC9, 0x58, 0x80, 0x7E,
    0x06, 0xF7, 0x71, 0x06, 0xF6, 0x63, 0x00, 0x06, 0xF7, 0x62, 0x00, 0x60, 0x80, 0x1F, 0x66, 0x80,
    0x0F, 0x57, 0x81, 0x7D, 0x15, 0xB9, 0x58, 0xA2, 0x97, 0x24, 0xBF, 0x34, 0x9F, 0x44, 0x7F, 0x64,
    0x3F, 0x93, 0x0C,
    /* second U+0037 7: 30 x 42 */
    0x05, 0xFF, 0x00, 0x00, 0x40, 0x8F, 0x07, 0xF4, 0x77, 0x00, 0xF4, 0x76, 0x40, 0x5F, 0x07, 0xF4,
    0x74, 0x00, 0xF4, 0x73, 0x40, 0x2F, 0x07, 0xF4, 0x71, 0x00, 0xF4, 0x70, 0x30, 0x7E, 0x30, 0x7D,
    0x30, 0x7C, 0x00, 0xB3, 0x07, 0xA3, 0x07, 0x93, 0x07, 0x30, 0x78, 0x00,
    /* second U+0038 8: 30 x 42 */
    0xA3, 0x4A, 0xF7, 0x41, 0xF5, 0x45, 0xF4, 0x07, 0x35, 0x88, 0x58, 0x73, 0x7A, 0x25, 0xC7, 0x57,
    0x62, 0x6E, 0x00, 0x00, 0x00, 0x25, 0xC7, 0x57, 0x73, 0x7A, 0x35, 0x88, 0x48, 0xF4, 0x07, 0x40,
    0xF3, 0x49, 0xF2, 0x5B, 0xA1, 0xA8, 0x15, 0xE7, 0x67, 0x61, 0x1F, 0x66, 0x70, 0x1F, 0x67, 0x60,
    0x3F, 0x06, 0x00, 0x00, 0x06, 0xF7, 0x71, 0x16, 0xF6, 0x61, 0x15, 0xE7, 0x57, 0xA1, 0xA8, 0x24,
    0xBF, 0x34, 0x9F, 0x44, 0x7F, 0x64, 0x3F, 0x93, 0x0C,
    /* second U+0039 9: 30 x 42 */
    0x93, 0x4C, 0xF6, 0x43, 0xF4, 0x47, 0xF3, 0x49, 0xF2, 0x5B, 0x92, 0xA7, 0x15, 0xB8, 0x59, 0x71,
    0x8D, 0x06, 0xF7, 0x80, 0x06, 0xF6, 0x81, 0x06, 0xF6, 0x72, 0x00, 0x60, 0x60, 0x3F, 0x06, 0x60,
    0x70, 0x1F, 0x57, 0x71, 0x8E, 0x15, 0xC8, 0x59, 0x92, 0xB8, 0x24, 0xDF, 0x34, 0xCF, 0x44, 0xBF,
    0x64, 0x9F, 0x95, 0x3C, 0x46, 0x9F, 0x06, 0xF4, 0x78, 0xF4, 0x68, 0x16, 0xF6, 0x61, 0x50, 0x71,
    0x7E, 0x25, 0xE6, 0x56, 0x72, 0x7C, 0x35, 0xA7, 0x57, 0x93, 0x96, 0x44, 0x7F, 0x54, 0x5F, 0x64,
    0x3F, 0x83, 0x3E, 0xAA,
    /* title U+0041 A: 21 x 22 */
    0x83, 0x05, 0x73, 0x07, 0x30, 0x96, 0x50, 0x55, 0x51, 0x00, 0x45, 0x35, 0x05, 0x35, 0x55, 0x45,
    0xF3, 0x00, 0x24, 0x2F, 0x25, 0x75, 0x55, 0x51, 0x59, 0x00, 0x05, 0xB5, 0x05,
    /* title U+0042 B: 18 x 22 */
    0x03, 0x3C, 0xE0, 0x04, 0x0F, 0x04, 0x1F, 0x05, 0x55, 0x56, 0x50, 0x56, 0x00, 0x05, 0x55, 0x46,
    0xF0, 0x01, 0x04, 0x2F, 0x04, 0x3F, 0x05, 0x75, 0x56, 0x50, 0x58, 0x00, 0x05, 0x75, 0x46, 0xF0,
    0x43, 0xF0, 0x42, 0xF0, 0x31, 0xE0,
    /* title U+0043 C: 20 x 22 */
    0x63, 0x38, 0xC4, 0x33, 0x4E, 0xF2, 0x51, 0x71, 0x74, 0x15, 0x85, 0x55, 0x60, 0x68, 0x03, 0x05,
    0x00, 0x00, 0x00, 0x05, 0x86, 0x56, 0x51, 0x58, 0x15, 0x47, 0x47, 0xF2, 0x31, 0xE3, 0x43, 0x3C,
    0x86,
    /* title U+004F O: 21 x 22 */
    0x63, 0x39, 0xD4, 0x34, 0x0F, 0x24, 0x2F, 0x15, 0x57, 0x57, 0x51, 0x59, 0x05, 0x96, 0x56, 0x50,
    0x5B, 0x00, 0x00, 0x00, 0x50, 0x60, 0x69, 0x15, 0x95, 0x55, 0x71, 0x75, 0x24, 0x2F, 0x34, 0x0F,
    0x43, 0x3D, 0x96,
    /* title U+0056 V: 21 x 22 */
    0x05, 0xB5, 0x05, 0x15, 0x95, 0x05, 0x50, 0x52, 0x57, 0x50, 0x53, 0x55, 0x00, 0x45, 0x35, 0x05,
    0x55, 0x15, 0x05, 0x30, 0x96, 0x30, 0x77, 0x00, 0x83, 0x05,
    /* title U+0063 c: 16 x 16 */
    0x43, 0x38, 0xC2, 0x13, 0x0E, 0x05, 0x46, 0x36, 0x50, 0x00, 0x00, 0x50, 0x60, 0x64, 0x13, 0x0E,
    0x23, 0x3C, 0x84,
    /* title U+0065 e: 17 x 16 */
    0x53, 0x37, 0xB3, 0x23, 0x5D, 0x61, 0x63, 0x05, 0x56, 0x56, 0x50, 0x57, 0x40, 0xF0, 0x02, 0x30,
    0x50, 0x03, 0x56, 0x61, 0x63, 0x23, 0x3D, 0xB3, 0x53, 0x07,
    /* title U+0066 f: 14 x 22 */
    0x83, 0x36, 0x86, 0x30, 0x95, 0x53, 0x05, 0x03, 0x0E, 0x00, 0x53, 0x05, 0x00, 0x00, 0x00, 0x00,
    0x00,
    /* title U+0068 h: 16 x 22 */
    0x03, 0x05, 0x00, 0x00, 0x03, 0x3C, 0xE0, 0x04, 0x0F, 0x50, 0x60, 0x64, 0x05, 0x65, 0x05, 0x00,
    0x00, 0x00, 0x00, 0x00,
    /* title U+0069 i: 5 x 24 */
    0x03, 0x05, 0x00, 0x10, 0x00, 0x03, 0x05, 0x00, 0x00, 0x00, 0x00, 0x00, 0x00, 0x00,
    /* title U+006C l: 9 x 22 */
    0x03, 0x05, 0x00, 0x00, 0x00, 0x00, 0x00, 0x00, 0x00, 0x00, 0x03, 0x09, 0x13, 0x38, 0x72,
    /* title U+006E n: 16 x 16 */
    0x03, 0x3C, 0xE0, 0x04, 0x0F, 0x50, 0x60, 0x64, 0x05, 0x65, 0x05, 0x00, 0x00, 0x00, 0x00, 0x00,
    /* title U+006F o: 17 x 16 */
    0x53, 0x37, 0xB3, 0x23, 0x4D, 0xF1, 0x50, 0x60, 0x65, 0x05, 0x75, 0x05, 0x00, 0x00, 0x05, 0x56,
    0x46, 0xF1, 0x30, 0xD2, 0x33, 0x3B, 0x75,
    /* title U+0070 p: 17 x 22 */
    0x03, 0x3C, 0xE0, 0x04, 0x0F, 0x04, 0x1F, 0x05, 0x56, 0x56, 0x50, 0x57, 0x00, 0x00, 0x50, 0x60,
    0x65, 0x04, 0x1F, 0x04, 0x0F, 0x03, 0x3E, 0xC0, 0x03, 0x05, 0x00, 0x00,
    /* title U+0073 s: 15 x 16 */
    0x33, 0x39, 0xD1, 0x04, 0x0F, 0x05, 0x55, 0x35, 0x50, 0x03, 0x36, 0x81, 0x23, 0x39, 0x94, 0x73,
    0x37, 0x5A, 0x50, 0x50, 0x55, 0x04, 0x0F, 0x13, 0x3D, 0x93,
    /* title U+0074 t: 14 x 21 */
    0x53, 0x05, 0x00, 0x30, 0xE0, 0x00, 0x30, 0x55, 0x00, 0x00, 0x00, 0x30, 0x95, 0x63, 0x08, 0x83,
    0x06,
    /* title U+0075 u: 16 x 16 */
    0x05, 0x65, 0x05, 0x00, 0x00, 0x00, 0x00, 0x50, 0x60, 0x64, 0x14, 0x0F, 0x30, 0xE2, 0x43, 0x0C,
    /* title U+0079 y: 17 x 22 */
    0x05, 0x75, 0x55, 0x50, 0x56, 0x15, 0x55, 0x05, 0x15, 0x45, 0x55, 0x52, 0x53, 0x50, 0x53, 0x51,
    0x30, 0x94, 0x30, 0x85, 0x53, 0x07, 0x63, 0x36, 0x56, 0x30, 0x55, 0x00, 0x43, 0x05,
    /* heading U+0042 B: 10 x 14 */
    0x38, 0x0E, 0x7F, 0xFC, 0x73, 0xDC, 0x3F, 0xFF, 0x1D, 0xFE, 0xDF, 0x3F,
    /* heading U+0046 F: 9 x 14 */
    0xBA, 0x3E, 0xFF, 0x0F, 0xFC, 0x39, 0x00,
    /* heading U+004D M: 15 x 14 */
    0x24, 0x39, 0x07, 0xF0, 0x07, 0xFC, 0x07, 0xFF, 0xC7, 0x7F, 0x77, 0x3F, 0x9F, 0x1F, 0xC7, 0x0F,
    0xE0,
    /* heading U+0054 T: 11 x 14 */
    0xFA, 0x3F, 0xFF, 0x87, 0x03,
    /* heading U+0056 V: 13 x 14 */
    0x5A, 0x2D, 0x07, 0xDC, 0xC1, 0x71, 0x1C, 0xDC, 0x01, 0x1F, 0xC0, 0x01,
    /* heading U+0061 a: 9 x 10 */
    0x80, 0x00, 0x7C, 0xFC, 0x1D, 0x07, 0xCE, 0xDF, 0xFF, 0x71, 0xFF, 0xFC, 0x01,
    /* heading U+0063 c: 9 x 10 */
    0x70, 0x00, 0x7C, 0xFC, 0x1D, 0x3F, 0x70, 0xDC, 0x1F, 0x1F,
    /* heading U+0064 d: 10 x 14 */
    0x0E, 0x07, 0x80, 0xF3, 0xEF, 0xFF, 0xF3, 0x87, 0x3F, 0xEF, 0x3F, 0xFF,
    /* heading U+0065 e: 10 x 10 */
    0x20, 0x00, 0xFC, 0xF8, 0xF7, 0xFC, 0xE1, 0xFF, 0x1F, 0xF0, 0xBC, 0x7F, 0xFC, 0x00,
    /* heading U+0066 f: 8 x 14 */
    0xA8, 0x3F, 0xE0, 0xF0, 0x38, 0xFF, 0x38,
    /* heading U+0067 g: 10 x 13 */
    0x70, 0x00, 0xFC, 0xFB, 0xFF, 0xFC, 0xE1, 0xCF, 0xFB, 0xCF, 0x3F, 0xE0, 0xFE, 0xF1, 0x03,
    /* heading U+0068 h: 9 x 14 */
    0x8E, 0x3F, 0x07, 0xFE, 0xFC, 0x3B, 0x0E,
    /* heading U+0069 i: 3 x 15 */
    0xD6, 0x7F, 0xC7, 0x01,
    /* heading U+006C l: 5 x 14 */
    0xFE, 0x0F, 0xE7, 0x7B,
    /* heading U+006D m: 17 x 10 */
    0xF8, 0x03, 0xFF, 0x7E, 0xFE, 0xFF, 0x1D, 0x0E, 0x07,
    /* heading U+006E n: 9 x 10 */
    0xF8, 0x03, 0x7F, 0xFE, 0x1D, 0x07,
    /* heading U+006F o: 10 x 10 */
    0x70, 0x00, 0xFC, 0xF8, 0xF7, 0xFC, 0xE1, 0xCF, 0xFB, 0xC7, 0x0F,
    /* heading U+0070 p: 10 x 13 */
    0x70, 0x18, 0xFF, 0xFC, 0xF7, 0xFC, 0xE1, 0xCF, 0xFF, 0xF7, 0xCF, 0x01,
    /* heading U+0072 r: 5 x 10 */
    0xFA, 0x03, 0xFF, 0x00,
    /* heading U+0073 s: 8 x 10 */
    0x20, 0x00, 0x7E, 0xFF, 0xE7, 0x0F, 0x7E, 0xF0, 0xE7, 0xFF, 0x7E,
    /* heading U+0074 t: 8 x 13 */
    0xD6, 0x07, 0x38, 0xFF, 0x38, 0xF0, 0xE0,
    /* heading U+0075 u: 9 x 10 */
    0xFE, 0x00, 0xC7, 0xFD, 0xF3, 0x07,
    /* heading U+0077 w: 19 x 10 */
    0xAA, 0x02, 0x07, 0x07, 0x77, 0x7C, 0x1C, 0x77, 0x77, 0xF0, 0xF1, 0x01, 0x07, 0x07,
    /* heading U+0079 y: 9 x 13 */
    0xDA, 0x0E, 0xC7, 0xDD, 0xF1, 0xC1, 0xC1, 0x01,
    /* text U+002C ,: 3 x 6 */
    0x16, 0xF7, 0x00,
    /* text U+002D -: 8 x 2 */
    0x02, 0xFF,
    /* text U+002E .: 3 x 3 */
    0x06, 0x07,
    /* text U+0030 0: 10 x 14 */
    0xC0, 0x01, 0x78, 0xF8, 0x67, 0xD8, 0xE1, 0x03, 0xCF, 0x3C, 0xF0, 0xE1, 0x86, 0xF9, 0x87, 0x07,
    /* text U+0031 1: 8 x 14 */
    0xE4, 0x2F, 0x1C, 0x1E, 0x1F, 0x18, 0xFF,
    /* text U+0032 2: 10 x 14 */
    0x00, 0x20, 0xFC, 0xF8, 0x77, 0xF8, 0xC0, 0x00, 0x03, 0x0E, 0x1C, 0x3C, 0x38, 0x70, 0xE0, 0xC0,
    0x01, 0xFF, 0x03,
    /* text U+0033 3: 10 x 14 */
    0x28, 0x00, 0x78, 0xF0, 0x63, 0x18, 0x60, 0xF0, 0xC0, 0x07, 0x38, 0xC0, 0x03, 0x1F, 0xEE, 0x1F,
    0x3F,
    /* text U+0034 4: 10 x 14 */
    0x92, 0x34, 0xC0, 0x80, 0x03, 0x0F, 0x36, 0xCC, 0x18, 0xF3, 0x3F, 0x30,
    /* text U+0035 5: 10 x 14 */
    0x1A, 0x02, 0xFF, 0x0D, 0xF0, 0xCF, 0x7F, 0x80, 0x03, 0x3C, 0xF0, 0xE1, 0xFE, 0xF1, 0x03,
    /* text U+0036 6: 10 x 14 */
    0x00, 0x02, 0x78, 0xF8, 0x67, 0xD8, 0xE1, 0x03, 0xFC, 0xF3, 0xDF, 0xE1, 0x03, 0x1F, 0x7C, 0xB8,
    0x7F, 0xFC, 0x00,
    /* text U+0037 7: 10 x 14 */
    0xAA, 0x2A, 0xFF, 0x03, 0x0C, 0x18, 0x30, 0x60, 0xC0, 0x80, 0x01,
    /* text U+0038 8: 10 x 14 */
    0x38, 0x04, 0x78, 0xF0, 0x63, 0x18, 0x3F, 0xFE, 0x1D, 0x3E, 0xF0, 0xE1, 0xFE, 0xF1, 0x03,
    /* text U+0039 9: 10 x 14 */
    0x20, 0x00, 0xFC, 0xF8, 0x77, 0xF8, 0xE0, 0x03, 0x1F, 0xEE, 0x3F, 0xFF, 0x00, 0x1F, 0x6E, 0x98,
    0x7F, 0x78, 0x00,
    /* text U+0041 A: 12 x 14 */
    0x5A, 0x28, 0x60, 0x00, 0x0F, 0x98, 0xC1, 0x30, 0xFC, 0xE3, 0x7F, 0x06, 0x36, 0xC0,
    /* text U+0043 C: 10 x 14 */
    0xE0, 0x03, 0x78, 0xF8, 0x67, 0xD8, 0xE1, 0x03, 0x1C, 0x6E, 0x98, 0x7F, 0x78, 0x00,
    /* text U+004A J: 7 x 14 */
    0xFE, 0x0B, 0xE0, 0xF1, 0xDF, 0x07,
    /* text U+004E N: 10 x 14 */
    0x92, 0x24, 0x03, 0x1F, 0xFC, 0xF0, 0xC6, 0x33, 0x8F, 0x3D, 0xFC, 0xE0, 0x03, 0x03,
    /* text U+004F O: 11 x 14 */
    0xE0, 0x03, 0xF8, 0xF0, 0x9F, 0xE3, 0x0E, 0x3E, 0xE0, 0x83, 0x3B, 0xCE, 0x7F, 0xF8, 0x00,
    /* text U+0052 R: 10 x 14 */
    0x10, 0x24, 0x7F, 0xFC, 0x33, 0xDC, 0x60, 0xC3, 0xFD, 0xF3, 0xC7, 0x18, 0xC3, 0x0C, 0x36, 0x30,
    /* text U+0053 S: 9 x 14 */
    0x00, 0x00, 0x7C, 0xFC, 0x1D, 0x1F, 0x3C, 0xE0, 0x81, 0x1F, 0x7E, 0xE0, 0x01, 0x0F, 0x3E, 0xEE,
    0x8F, 0x0F,
    /* text U+0054 T: 10 x 14 */
    0xFA, 0x3F, 0xFF, 0xC3, 0x00,
    /* text U+0055 U: 10 x 14 */
    0xFE, 0x07, 0x03, 0x1F, 0xEE, 0x1F, 0x3F,
    /* text U+0056 V: 12 x 14 */
    0x5A, 0x2D, 0x03, 0x6C, 0x60, 0x0C, 0x83, 0x19, 0xF0, 0x00, 0x06,
    /* text U+0057 W: 18 x 14 */
    0xB6, 0x36, 0x03, 0x03, 0x1B, 0x1E, 0xC6, 0xCC, 0x0C, 0x1E, 0x1E, 0x30, 0x30, 0x00,
    /* text U+0061 a: 8 x 10 */
    0x80, 0x00, 0x3C, 0x7E, 0xE7, 0xC0, 0xFE, 0xFF, 0xC3, 0xFF, 0xFE,
    /* text U+0062 b: 9 x 14 */
    0x0E, 0x07, 0x03, 0xFE, 0xFC, 0x3B, 0x3E, 0xF8, 0xF8, 0xBF, 0x3F,
    /* text U+0063 c: 8 x 10 */
    0x70, 0x00, 0x3C, 0x7E, 0xE7, 0x03, 0xE7, 0x7E, 0x3C,
    /* text U+0064 d: 9 x 14 */
    0x0E, 0x07, 0x80, 0xF9, 0xFB, 0x3F, 0x3E, 0xF8, 0xB8, 0x7F, 0xFE,
    /* text U+0065 e: 9 x 10 */
    0x20, 0x00, 0x7C, 0xFC, 0x1D, 0x1F, 0xFC, 0x7F, 0xC0, 0x71, 0x7F, 0x7C, 0x00,
    /* text U+0066 f: 6 x 14 */
    0xA8, 0x3F, 0x30, 0xCE, 0xFC, 0x0C,
    /* text U+0067 g: 9 x 13 */
    0x70, 0x00, 0xFC, 0xFD, 0x1F, 0x1F, 0x7C, 0xDC, 0x3F, 0x7F, 0xC0, 0xFE, 0xF8, 0x00,
    /* text U+0068 h: 8 x 14 */
    0x8E, 0x3F, 0x03, 0x3F, 0x7F, 0xC3,
    /* text U+0069 i: 2 x 14 */
    0xEA, 0x3F, 0x33,
    /* text U+006B k: 8 x 14 */
    0x0E, 0x11, 0x03, 0xC3, 0x63, 0x33, 0x1B, 0x3F, 0x37, 0x63, 0xC3,
    /* text U+006C l: 4 x 14 */
    0xFE, 0x0F, 0xF3, 0x0E,
    /* text U+006E n: 8 x 10 */
    0xF8, 0x03, 0x3F, 0x7F, 0xC3,
    /* text U+006F o: 9 x 10 */
    0x70, 0x00, 0x7C, 0xFC, 0x1D, 0x1F, 0x7C, 0xDC, 0x1F, 0x1F,
    /* text U+0070 p: 9 x 13 */
    0x70, 0x18, 0x7F, 0xFE, 0x1D, 0x1F, 0x7C, 0xFC, 0xDF, 0x9F, 0x01,
    /* text U+0072 r: 5 x 10 */
    0xFA, 0x03, 0x7F, 0x00,
    /* text U+0073 s: 7 x 10 */
    0x20, 0x00, 0xBE, 0xFF, 0xF8, 0xE0, 0x83, 0x8F, 0xFF, 0x3E,
    /* text U+0074 t: 6 x 13 */
    0xD6, 0x07, 0xCC, 0xCF, 0xE0, 0x30,
    /* text U+0075 u: 8 x 10 */
    0xFE, 0x00, 0xC3, 0xFE, 0xFC,
    /* text U+0076 v: 8 x 10 */
    0xDA, 0x02, 0xC3, 0x66, 0x3C, 0x18,
    /* text U+0077 w: 14 x 10 */
    0xDA, 0x02, 0xC3, 0xB0, 0x79, 0xC6, 0xF3, 0x60, 0x18,
    /* text U+0079 y: 8 x 13 */
    0xDA, 0x0E, 0xC3, 0x66, 0x3C, 0x18, 0x0C,
    /* text U+00B0: 6 x 6 */
    0x1C, 0xDE, 0xEC, 0x01,
    /* icon work network off: 24 x 24 */
    0x34, 0x3F, 0x50, 0x23, 0x2E, 0x00, 0x00, 0x34, 0x3F, 0x50, 0x23, 0x2E, 0x00, 0x00, 0x40, 0xF3,
    0x03, 0x01, 0x00, 0x00, 0x00,
    /* icon work network trying-1: 24 x 24 */
    0x34, 0x3F, 0x50, 0x23, 0x2E, 0x90, 0x23, 0x52, 0x23, 0x22, 0x50, 0x23, 0x2E, 0x34, 0x3F, 0x50,
    0x23, 0x2E, 0x90, 0x23, 0x52, 0x23, 0x22, 0x50, 0x23, 0x2E, 0x40, 0xF3, 0x03, 0x01, 0x00, 0x30,
    0x80, 0x00,
    /* icon work network trying-2: 24 x 24 */
    0x34, 0x3F, 0x50, 0x23, 0x2E, 0x90, 0x23, 0x52, 0x23, 0x22, 0x50, 0x23, 0x2E, 0x34, 0x3F, 0x50,
    0x23, 0x2E, 0x90, 0x23, 0x52, 0x23, 0x22, 0x50, 0x23, 0x2E, 0x40, 0xF3, 0x03, 0x01, 0x00, 0x30,
    0x88, 0x00,
    /* icon work network trying-3: 24 x 24 */
    0x34, 0x3F, 0x50, 0x23, 0x2E, 0x90, 0x23, 0x52, 0x23, 0x22, 0x50, 0x23, 0x2E, 0x34, 0x3F, 0x50,
    0x23, 0x2E, 0x90, 0x23, 0x52, 0x23, 0x22, 0x50, 0x23, 0x2E, 0x40, 0xF3, 0x03, 0x01, 0x00, 0x40,
    0x1F, 0x08,
    /* icon work network up: 24 x 24 */
    0x34, 0x3F, 0x50, 0x23, 0x2E, 0x90, 0x23, 0x52, 0x23, 0x22, 0x50, 0x23, 0x2E, 0x34, 0x3F, 0x50,
    0x23, 0x2E, 0x90, 0x23, 0x52, 0x23, 0x22, 0x50, 0x23, 0x2E, 0x40, 0xF3, 0x03, 0xB3, 0x02, 0x00,
    0x40, 0xF0, 0x09,
    /* icon work network fault: 24 x 24 */
    0x34, 0x3F, 0x50, 0x23, 0x2E, 0x90, 0x23, 0x52, 0x23, 0x22, 0x50, 0x23, 0x2E, 0x34, 0x3F, 0x50,
    0x23, 0x2E, 0x90, 0x23, 0x52, 0x23, 0x22, 0x30, 0x23, 0x70, 0xA3, 0x22, 0x25, 0x37, 0x2A, 0x33,
    0x63, 0x1F, 0x13, 0x43, 0x2F, 0x45, 0x3F, 0x43, 0x2F, 0x65, 0x1F, 0x13, 0x63, 0x0F, 0x33, 0x63,
    0x0F, 0x52, 0x02,
    /* icon work keys off: 24 x 24 */
    0xA3, 0x34, 0x69, 0x85, 0x23, 0x53, 0x37, 0x34, 0x75, 0x62, 0x02, 0x65, 0x82, 0x32, 0x26, 0x00,
    0x40, 0xF3, 0x03, 0x35, 0xE2, 0x02, 0x37, 0x62, 0x62, 0x02, 0x00, 0x50, 0x23, 0x2E, 0x40, 0xF3,
    0x03,
    /* icon work keys up: 24 x 24 */
    0xA3, 0x34, 0x69, 0x85, 0x23, 0x53, 0x37, 0x34, 0x75, 0x62, 0x02, 0x65, 0x82, 0x02, 0x00, 0x40,
    0xF3, 0x03, 0x00, 0x35, 0x28, 0x08, 0x00, 0x40, 0xF3, 0x03, 0x00,
    /* icon work keys fault: 24 x 24 */
    0xA3, 0x34, 0x69, 0x85, 0x23, 0x53, 0x37, 0x34, 0x75, 0x62, 0x02, 0x65, 0x82, 0x02, 0x00, 0x40,
    0xF3, 0x03, 0x33, 0x0A, 0x37, 0x48, 0x52, 0x72, 0x83, 0x34, 0x33, 0x37, 0x58, 0x13, 0x53, 0x83,
    0x56, 0x35, 0x78, 0x53, 0xA3, 0x54, 0x37, 0x3A, 0x13, 0x73, 0xA3, 0x32, 0x33, 0x37, 0x2A, 0x52,
    0x02,
};

/* Of each glyph, the bytes of its character as one number; of an icon's state, its number from 1. */
static BENCH_SUPPLY_CONST uint16_t bench_supply_codes_[] = {
    0x2D, 0x2E, 0x30, 0x31, 0x32, 0x33, 0x34, 0x35, 0x36, 0x37, 0x38, 0x39,
    0x2D, 0x2E, 0x30, 0x31, 0x32, 0x33, 0x34, 0x35, 0x36, 0x37, 0x38, 0x39,
    0x20, 0x41, 0x42, 0x43, 0x4F, 0x56, 0x63, 0x65, 0x66, 0x68, 0x69, 0x6C, 0x6E, 0x6F, 0x70, 0x73,
    0x74, 0x75, 0x79,
    0x20, 0x42, 0x46, 0x4D, 0x54, 0x56, 0x61, 0x63, 0x64, 0x65, 0x66, 0x67, 0x68, 0x69, 0x6C, 0x6D,
    0x6E, 0x6F, 0x70, 0x72, 0x73, 0x74, 0x75, 0x77, 0x79,
    0x20, 0x2C, 0x2D, 0x2E, 0x30, 0x31, 0x32, 0x33, 0x34, 0x35, 0x36, 0x37, 0x38, 0x39, 0x41, 0x43,
    0x4A, 0x4E, 0x4F, 0x52, 0x53, 0x54, 0x55, 0x56, 0x57, 0x61, 0x62, 0x63, 0x64, 0x65, 0x66, 0x67,
    0x68, 0x69, 0x6B, 0x6C, 0x6E, 0x6F, 0x70, 0x72, 0x73, 0x74, 0x75, 0x76, 0x77, 0x79, 0xC2B0,
    0x01, 0x02, 0x03, 0x04, 0x05, 0x06,
    0x01, 0x02, 0x03,
};

/* the label `title` */
static BENCH_SUPPLY_CONST char bench_supply_text_start_title_[] = BENCH_SUPPLY_START_TITLE_TEXT;

/* the label `caution` */
static BENCH_SUPPLY_CONST char bench_supply_text_start_caution_[] = BENCH_SUPPLY_START_CAUTION_TEXT;

/* the label `title` */
static BENCH_SUPPLY_CONST char bench_supply_text_work_title_[] = BENCH_SUPPLY_WORK_TITLE_TEXT;

/* the label `volt` */
static BENCH_SUPPLY_CONST char bench_supply_text_work_volt_[] = BENCH_SUPPLY_WORK_VOLT_TEXT;

/* the label `ampere` */
static BENCH_SUPPLY_CONST char bench_supply_text_work_ampere_[] = BENCH_SUPPLY_WORK_AMPERE_TEXT;

/* the label `set-word` */
static BENCH_SUPPLY_CONST char bench_supply_text_work_set_word_[] = BENCH_SUPPLY_WORK_SET_WORD_TEXT;

/* the label `set-volt` */
static BENCH_SUPPLY_CONST char bench_supply_text_work_set_volt_[] = BENCH_SUPPLY_WORK_SET_VOLT_TEXT;

/* the label `set-ampere` */
static BENCH_SUPPLY_CONST char bench_supply_text_work_set_ampere_[] = BENCH_SUPPLY_WORK_SET_AMPERE_TEXT;

/* the label `out-word` */
static BENCH_SUPPLY_CONST char bench_supply_text_work_out_word_[] = BENCH_SUPPLY_WORK_OUT_WORD_TEXT;

/* the label `watt` */
static BENCH_SUPPLY_CONST char bench_supply_text_work_watt_[] = BENCH_SUPPLY_WORK_WATT_TEXT;

/* the label `sink-word` */
static BENCH_SUPPLY_CONST char bench_supply_text_work_sink_word_[] = BENCH_SUPPLY_WORK_SINK_WORD_TEXT;

/* the label `degree` */
static BENCH_SUPPLY_CONST char bench_supply_text_work_degree_[] = BENCH_SUPPLY_WORK_DEGREE_TEXT;

/* the label `title` */
static BENCH_SUPPLY_CONST char bench_supply_text_fault_title_[] = BENCH_SUPPLY_FAULT_TITLE_TEXT;

/* the label `at-word` */
static BENCH_SUPPLY_CONST char bench_supply_text_fault_at_word_[] = BENCH_SUPPLY_FAULT_AT_WORD_TEXT;

/* the label `advice` */
static BENCH_SUPPLY_CONST char bench_supply_text_fault_advice_[] = BENCH_SUPPLY_FAULT_ADVICE_TEXT;

/* Inks of the states of the icon `network`. */
static BENCH_SUPPLY_CONST uint16_t bench_supply_inks_work_network_[] = {
    BENCH_SUPPLY_WORK_NETWORK_INK, BENCH_SUPPLY_WORK_NETWORK_INK, BENCH_SUPPLY_WORK_NETWORK_INK,
    BENCH_SUPPLY_WORK_NETWORK_INK, BENCH_SUPPLY_WORK_NETWORK_INK, BENCH_SUPPLY_INK_WARN,
};

/* Inks of the states of the icon `keys`. */
static BENCH_SUPPLY_CONST uint16_t bench_supply_inks_work_keys_[] = {
    BENCH_SUPPLY_WORK_KEYS_INK, BENCH_SUPPLY_WORK_KEYS_INK, BENCH_SUPPLY_INK_WARN,
};

/* A glyph, in pixels. */
typedef struct bench_supply_glyph_ {
    uint16_t first_byte;
    uint8_t left;        /* columns between the pen and the first */
    uint8_t drop;        /* rows over the first */
    uint8_t width;
    uint8_t height;
    uint8_t advance;
} bench_supply_glyph_;


static BENCH_SUPPLY_CONST bench_supply_glyph_ bench_supply_glyphs_[] = {
    /* reading: pellucet-numerals-64.bdf, 64 px, one-bit, native bitmaps */
    /* columns from 3 px off the pen, rows from 56 px over the baseline; bitmaps as runs */
    {    0, 3, 25, 34,  7, 46 }, /* U+002D - */
    {    6, 0, 47,  9,  9, 15 }, /* U+002E . */
    {   12, 0,  0, 40, 56, 46 }, /* U+0030 0 */
    {  106, 4,  0, 32, 56, 46 }, /* U+0031 1 */
    {  152, 0,  0, 40, 56, 46 }, /* U+0032 2 */
    {  245, 0,  0, 40, 56, 46 }, /* U+0033 3 */
    {  351, 0,  0, 40, 56, 46 }, /* U+0034 4 */
    {  422, 0,  0, 40, 56, 46 }, /* U+0035 5 */
    {  508, 0,  0, 40, 56, 46 }, /* U+0036 6 */
    {  631, 0,  0, 40, 56, 46 }, /* U+0037 7 */
    {  693, 0,  0, 40, 56, 46 }, /* U+0038 8 */
    {  800, 0,  0, 40, 56, 46 }, /* U+0039 9 */
    /* second: pellucet-numerals-48.bdf, 48 px, one-bit, native bitmaps */
    /* columns from 2 px off the pen, rows from 42 px over the baseline; bitmaps as runs */
    {  926, 2, 19, 26,  5, 35 }, /* U+002D - */
    {  930, 0, 35,  7,  7, 11 }, /* U+002E . */
    {  935, 0,  0, 30, 42, 35 }, /* U+0030 0 */
    { 1002, 3,  0, 24, 42, 35 }, /* U+0031 1 */
    { 1035, 0,  0, 30, 42, 35 }, /* U+0032 2 */
    { 1103, 0,  0, 30, 42, 35 }, /* U+0033 3 */
    { 1174, 0,  0, 30, 42, 35 }, /* U+0034 4 */
    { 1226, 0,  0, 30, 42, 35 }, /* U+0035 5 */
    { 1283, 0,  0, 30, 42, 35 }, /* U+0036 6 */
    { 1366, 0,  0, 30, 42, 35 }, /* U+0037 7 */
    { 1410, 0,  0, 30, 42, 35 }, /* U+0038 8 */
    { 1483, 0,  0, 30, 42, 35 }, /* U+0039 9 */
    /* title: pellucet-bold-32.bdf, 32 px, one-bit, native bitmaps */
    /* columns from 1 px off the pen, rows from 24 px over the baseline; bitmaps as runs */
    {    0, 0,  0,  0,  0, 10 }, /* U+0020 */
    { 1567, 0,  2, 21, 22, 23 }, /* U+0041 A */
    { 1596, 2,  2, 18, 22, 23 }, /* U+0042 B */
    { 1634, 1,  2, 20, 22, 24 }, /* U+0043 C */
    { 1667, 1,  2, 21, 22, 25 }, /* U+004F O */
    { 1702, 0,  2, 21, 22, 23 }, /* U+0056 V */
    { 1728, 1,  8, 16, 16, 20 }, /* U+0063 c */
    { 1747, 1,  8, 17, 16, 21 }, /* U+0065 e */
    { 1773, 0,  2, 14, 22, 16 }, /* U+0066 f */
    { 1790, 2,  2, 16, 22, 21 }, /* U+0068 h */
    { 1810, 2,  0,  5, 24, 10 }, /* U+0069 i */
    { 1824, 2,  2,  9, 22, 13 }, /* U+006C l */
    { 1839, 2,  8, 16, 16, 21 }, /* U+006E n */
    { 1855, 1,  8, 17, 16, 21 }, /* U+006F o */
    { 1878, 2,  8, 17, 22, 22 }, /* U+0070 p */
    { 1906, 1,  8, 15, 16, 19 }, /* U+0073 s */
    { 1932, 0,  3, 14, 21, 16 }, /* U+0074 t */
    { 1949, 2,  8, 16, 16, 21 }, /* U+0075 u */
    { 1965, 0,  8, 17, 22, 19 }, /* U+0079 y */
    /* heading: pellucet-bold-20.bdf, 20 px, one-bit, native bitmaps */
    /* columns from 1 px off the pen, rows from 15 px over the baseline; bitmaps as repeats */
    {    0, 0,  0,  0,  0,  5 }, /* U+0020 */
    { 1995, 1,  1, 10, 14, 13 }, /* U+0042 B */
    { 2007, 1,  1,  9, 14, 12 }, /* U+0046 F */
    { 2014, 1,  1, 15, 14, 18 }, /* U+004D M */
    { 2031, 0,  1, 11, 14, 13 }, /* U+0054 T */
    { 2036, 0,  1, 13, 14, 15 }, /* U+0056 V */
    { 2048, 0,  5,  9, 10, 11 }, /* U+0061 a */
    { 2061, 0,  5,  9, 10, 11 }, /* U+0063 c */
    { 2071, 0,  1, 10, 14, 12 }, /* U+0064 d */
    { 2083, 0,  5, 10, 10, 12 }, /* U+0065 e */
    { 2097, 0,  1,  8, 14, 10 }, /* U+0066 f */
    { 2104, 0,  5, 10, 13, 12 }, /* U+0067 g */
    { 2119, 1,  1,  9, 14, 12 }, /* U+0068 h */
    { 2126, 1,  0,  3, 15,  6 }, /* U+0069 i */
    { 2130, 1,  1,  5, 14,  8 }, /* U+006C l */
    { 2134, 1,  5, 17, 10, 20 }, /* U+006D m */
    { 2143, 1,  5,  9, 10, 12 }, /* U+006E n */
    { 2149, 0,  5, 10, 10, 12 }, /* U+006F o */
    { 2160, 1,  5, 10, 13, 13 }, /* U+0070 p */
    { 2172, 1,  5,  5, 10,  8 }, /* U+0072 r */
    { 2176, 0,  5,  8, 10, 10 }, /* U+0073 s */
    { 2187, 0,  2,  8, 13, 10 }, /* U+0074 t */
    { 2194, 1,  5,  9, 10, 12 }, /* U+0075 u */
    { 2200, 0,  5, 19, 10, 21 }, /* U+0077 w */
    { 2214, 0,  5,  9, 13, 11 }, /* U+0079 y */
    /* text: pellucet-20.bdf, 20 px, one-bit, native bitmaps */
    /* columns from 1 px off the pen, rows from 14 px over the baseline; bitmaps as repeats */
    {    0, 0,  0,  0,  0,  5 }, /* U+0020 */
    { 2222, 0, 11,  3,  6,  5 }, /* U+002C , */
    { 2225, 1,  8,  8,  2, 12 }, /* U+002D - */
    { 2227, 0, 11,  3,  3,  5 }, /* U+002E . */
    { 2229, 0,  0, 10, 14, 12 }, /* U+0030 0 */
    { 2245, 1,  0,  8, 14, 12 }, /* U+0031 1 */
    { 2252, 0,  0, 10, 14, 12 }, /* U+0032 2 */
    { 2271, 0,  0, 10, 14, 12 }, /* U+0033 3 */
    { 2288, 0,  0, 10, 14, 12 }, /* U+0034 4 */
    { 2300, 0,  0, 10, 14, 12 }, /* U+0035 5 */
    { 2315, 0,  0, 10, 14, 12 }, /* U+0036 6 */
    { 2334, 0,  0, 10, 14, 12 }, /* U+0037 7 */
    { 2345, 0,  0, 10, 14, 12 }, /* U+0038 8 */
    { 2360, 0,  0, 10, 14, 12 }, /* U+0039 9 */
    { 2379, 0,  0, 12, 14, 14 }, /* U+0041 A */
    { 2393, 0,  0, 10, 14, 12 }, /* U+0043 C */
    { 2407, 0,  0,  7, 14,  9 }, /* U+004A J */
    { 2413, 1,  0, 10, 14, 13 }, /* U+004E N */
    { 2427, 0,  0, 11, 14, 13 }, /* U+004F O */
    { 2442, 1,  0, 10, 14, 13 }, /* U+0052 R */
    { 2458, 0,  0,  9, 14, 11 }, /* U+0053 S */
    { 2476, 0,  0, 10, 14, 12 }, /* U+0054 T */
    { 2481, 1,  0, 10, 14, 13 }, /* U+0055 U */
    { 2488, 0,  0, 12, 14, 14 }, /* U+0056 V */
    { 2499, 0,  0, 18, 14, 20 }, /* U+0057 W */
    { 2513, 0,  4,  8, 10, 10 }, /* U+0061 a */
    { 2524, 1,  0,  9, 14, 12 }, /* U+0062 b */
    { 2535, 0,  4,  8, 10, 10 }, /* U+0063 c */
    { 2544, 0,  0,  9, 14, 11 }, /* U+0064 d */
    { 2555, 0,  4,  9, 10, 11 }, /* U+0065 e */
    { 2568, 0,  0,  6, 14,  8 }, /* U+0066 f */
    { 2574, 0,  4,  9, 13, 11 }, /* U+0067 g */
    { 2588, 1,  0,  8, 14, 11 }, /* U+0068 h */
    { 2594, 1,  0,  2, 14,  5 }, /* U+0069 i */
    { 2597, 1,  0,  8, 14, 11 }, /* U+006B k */
    { 2608, 1,  0,  4, 14,  7 }, /* U+006C l */
    { 2612, 1,  4,  8, 10, 11 }, /* U+006E n */
    { 2617, 0,  4,  9, 10, 11 }, /* U+006F o */
    { 2627, 1,  4,  9, 13, 12 }, /* U+0070 p */
    { 2638, 1,  4,  5, 10,  8 }, /* U+0072 r */
    { 2642, 0,  4,  7, 10,  9 }, /* U+0073 s */
    { 2652, 0,  1,  6, 13,  8 }, /* U+0074 t */
    { 2658, 1,  4,  8, 10, 11 }, /* U+0075 u */
    { 2663, 0,  4,  8, 10, 10 }, /* U+0076 v */
    { 2669, 0,  4, 14, 10, 16 }, /* U+0077 w */
    { 2678, 0,  4,  8, 13, 10 }, /* U+0079 y */
    { 2685, 0,  0,  6,  6,  8 }, /* U+00B0 */
    /* the icons */
    /* columns from 0 px off the pen, rows from 0 px over the baseline; bitmaps as runs */
    { 2689, 0,  0, 24, 24, 24 }, /* work network off */
    { 2710, 0,  0, 24, 24, 24 }, /* work network trying-1 */
    { 2744, 0,  0, 24, 24, 24 }, /* work network trying-2 */
    { 2778, 0,  0, 24, 24, 24 }, /* work network trying-3 */
    { 2812, 0,  0, 24, 24, 24 }, /* work network up */
    { 2847, 0,  0, 24, 24, 24 }, /* work network fault */
    { 2898, 0,  0, 24, 24, 24 }, /* work keys off */
    { 2931, 0,  0, 24, 24, 24 }, /* work keys up */
    { 2958, 0,  0, 24, 24, 24 }, /* work keys fault */
};

/* A text or an icon: its place, and what an update repaints. */
typedef struct bench_supply_part_ {
    int16_t x;         /* of the first pen; or of the last, or the middle */
    int16_t y;         /* of the rows from which its glyphs drop */
    int16_t left;
    int16_t top;
    int16_t right;
    int16_t bottom;
    uint16_t ink;
    uint16_t ground;
    uint8_t longest;   /* bytes of its text */
    uint8_t first;     /* place of its first glyph */
    uint8_t glyphs;
    uint8_t form;      /* of its bitmaps */
    uint8_t alignment;
    uint8_t clearing;
} bench_supply_part_;

#define BENCH_SUPPLY_INK_(part)       ((part)->ink)
#define BENCH_SUPPLY_GROUND_(part)    ((part)->ground)
#define BENCH_SUPPLY_LONGEST_(part)   ((part)->longest)
#define BENCH_SUPPLY_FIRST_(part)     ((part)->first)
#define BENCH_SUPPLY_GLYPHS_(part)    ((part)->glyphs)
#define BENCH_SUPPLY_FORM_(part)      ((part)->form)
#define BENCH_SUPPLY_ALIGNMENT_(part) ((part)->alignment)
#define BENCH_SUPPLY_CLEARING_(part)  ((part)->clearing)
#define BENCH_SUPPLY_DEPTH_(part)     1
#define BENCH_SUPPLY_RAMP_(part)      0
#define BENCH_SUPPLY_NONE_       0
#define BENCH_SUPPLY_CELL_       1
#define BENCH_SUPPLY_PAD_        2
#define BENCH_SUPPLY_BOX_        3
#define BENCH_SUPPLY_AS_ROWS_    0
#define BENCH_SUPPLY_AS_REPEATS_ 1
#define BENCH_SUPPLY_AS_RUNS_    2

static BENCH_SUPPLY_CONST bench_supply_part_ bench_supply_part_start_title_ = {
    BENCH_SUPPLY_START_TITLE_X + 1, BENCH_SUPPLY_START_TITLE_BASELINE - 24, 0, 0,
    BENCH_SUPPLY_PANEL_WIDTH, BENCH_SUPPLY_PANEL_HEIGHT, BENCH_SUPPLY_START_TITLE_INK,
    BENCH_SUPPLY_START_TITLE_GROUND, 12, 24, 19, BENCH_SUPPLY_AS_RUNS_, BENCH_SUPPLY_CENTRED_ON_X,
    BENCH_SUPPLY_NONE_,
};

static BENCH_SUPPLY_CONST bench_supply_part_ bench_supply_part_start_message_ = {
    BENCH_SUPPLY_START_MESSAGE_X + 1, BENCH_SUPPLY_START_MESSAGE_BASELINE - 14,
    BENCH_SUPPLY_ACROSS_(BENCH_SUPPLY_START_MESSAGE_PADDING_X),
    BENCH_SUPPLY_DOWN_(BENCH_SUPPLY_START_MESSAGE_PADDING_Y),
    BENCH_SUPPLY_ACROSS_(BENCH_SUPPLY_START_MESSAGE_PADDING_X + BENCH_SUPPLY_START_MESSAGE_PADDING_WIDTH),
    BENCH_SUPPLY_DOWN_(BENCH_SUPPLY_START_MESSAGE_PADDING_Y + BENCH_SUPPLY_START_MESSAGE_PADDING_HEIGHT),
    BENCH_SUPPLY_START_MESSAGE_INK, BENCH_SUPPLY_START_MESSAGE_GROUND, 25, 68, 47,
    BENCH_SUPPLY_AS_REPEATS_, BENCH_SUPPLY_CENTRED_ON_X, BENCH_SUPPLY_PAD_,
};

static BENCH_SUPPLY_CONST bench_supply_part_ bench_supply_part_start_caution_ = {
    BENCH_SUPPLY_START_CAUTION_X + 1, BENCH_SUPPLY_START_CAUTION_BASELINE - 14, 0, 0,
    BENCH_SUPPLY_PANEL_WIDTH, BENCH_SUPPLY_PANEL_HEIGHT, BENCH_SUPPLY_START_CAUTION_INK,
    BENCH_SUPPLY_START_CAUTION_GROUND, 19, 68, 47, BENCH_SUPPLY_AS_REPEATS_, BENCH_SUPPLY_CENTRED_ON_X,
    BENCH_SUPPLY_NONE_,
};

static BENCH_SUPPLY_CONST bench_supply_part_ bench_supply_part_work_title_ = {
    BENCH_SUPPLY_WORK_TITLE_X + 1, BENCH_SUPPLY_WORK_TITLE_BASELINE - 15, 0, 0,
    BENCH_SUPPLY_PANEL_WIDTH, BENCH_SUPPLY_PANEL_HEIGHT, BENCH_SUPPLY_WORK_TITLE_INK,
    BENCH_SUPPLY_WORK_TITLE_GROUND, 12, 43, 25, BENCH_SUPPLY_AS_REPEATS_, BENCH_SUPPLY_STARTS_AT_X,
    BENCH_SUPPLY_NONE_,
};

static BENCH_SUPPLY_CONST bench_supply_part_ bench_supply_part_work_network_ = {
    BENCH_SUPPLY_WORK_NETWORK_X, BENCH_SUPPLY_WORK_NETWORK_Y,
    BENCH_SUPPLY_ACROSS_(BENCH_SUPPLY_WORK_NETWORK_PADDING_X),
    BENCH_SUPPLY_DOWN_(BENCH_SUPPLY_WORK_NETWORK_PADDING_Y),
    BENCH_SUPPLY_ACROSS_(BENCH_SUPPLY_WORK_NETWORK_PADDING_X + BENCH_SUPPLY_WORK_NETWORK_PADDING_WIDTH),
    BENCH_SUPPLY_DOWN_(BENCH_SUPPLY_WORK_NETWORK_PADDING_Y + BENCH_SUPPLY_WORK_NETWORK_PADDING_HEIGHT),
    BENCH_SUPPLY_WORK_NETWORK_INK, BENCH_SUPPLY_WORK_NETWORK_GROUND, 1, 115, 6, BENCH_SUPPLY_AS_RUNS_,
    BENCH_SUPPLY_STARTS_AT_X, BENCH_SUPPLY_PAD_,
};

static BENCH_SUPPLY_CONST bench_supply_part_ bench_supply_part_work_keys_ = {
    BENCH_SUPPLY_WORK_KEYS_X, BENCH_SUPPLY_WORK_KEYS_Y,
    BENCH_SUPPLY_ACROSS_(BENCH_SUPPLY_WORK_KEYS_PADDING_X),
    BENCH_SUPPLY_DOWN_(BENCH_SUPPLY_WORK_KEYS_PADDING_Y),
    BENCH_SUPPLY_ACROSS_(BENCH_SUPPLY_WORK_KEYS_PADDING_X + BENCH_SUPPLY_WORK_KEYS_PADDING_WIDTH),
    BENCH_SUPPLY_DOWN_(BENCH_SUPPLY_WORK_KEYS_PADDING_Y + BENCH_SUPPLY_WORK_KEYS_PADDING_HEIGHT),
    BENCH_SUPPLY_WORK_KEYS_INK, BENCH_SUPPLY_WORK_KEYS_GROUND, 1, 121, 3, BENCH_SUPPLY_AS_RUNS_,
    BENCH_SUPPLY_STARTS_AT_X, BENCH_SUPPLY_PAD_,
};

static BENCH_SUPPLY_CONST bench_supply_part_ bench_supply_part_work_volts_ = {
    BENCH_SUPPLY_WORK_VOLTS_X + 3, BENCH_SUPPLY_WORK_VOLTS_BASELINE - 56,
    BENCH_SUPPLY_ACROSS_(BENCH_SUPPLY_WORK_VOLTS_PADDING_X),
    BENCH_SUPPLY_DOWN_(BENCH_SUPPLY_WORK_VOLTS_PADDING_Y),
    BENCH_SUPPLY_ACROSS_(BENCH_SUPPLY_WORK_VOLTS_PADDING_X + BENCH_SUPPLY_WORK_VOLTS_PADDING_WIDTH),
    BENCH_SUPPLY_DOWN_(BENCH_SUPPLY_WORK_VOLTS_PADDING_Y + BENCH_SUPPLY_WORK_VOLTS_PADDING_HEIGHT),
    BENCH_SUPPLY_WORK_VOLTS_INK, BENCH_SUPPLY_WORK_VOLTS_GROUND, 6, 0, 12, BENCH_SUPPLY_AS_RUNS_,
    BENCH_SUPPLY_ENDS_AT_X, BENCH_SUPPLY_PAD_,
};

static BENCH_SUPPLY_CONST bench_supply_part_ bench_supply_part_work_volt_ = {
    BENCH_SUPPLY_WORK_VOLT_X + 1, BENCH_SUPPLY_WORK_VOLT_BASELINE - 24, 0, 0, BENCH_SUPPLY_PANEL_WIDTH,
    BENCH_SUPPLY_PANEL_HEIGHT, BENCH_SUPPLY_WORK_VOLT_INK, BENCH_SUPPLY_WORK_VOLT_GROUND, 1, 24, 19,
    BENCH_SUPPLY_AS_RUNS_, BENCH_SUPPLY_STARTS_AT_X, BENCH_SUPPLY_NONE_,
};

static BENCH_SUPPLY_CONST bench_supply_part_ bench_supply_part_work_mode_ = {
    BENCH_SUPPLY_WORK_MODE_X + 1, BENCH_SUPPLY_WORK_MODE_BASELINE - 24,
    BENCH_SUPPLY_ACROSS_(BENCH_SUPPLY_WORK_MODE_PADDING_X),
    BENCH_SUPPLY_DOWN_(BENCH_SUPPLY_WORK_MODE_PADDING_Y),
    BENCH_SUPPLY_ACROSS_(BENCH_SUPPLY_WORK_MODE_PADDING_X + BENCH_SUPPLY_WORK_MODE_PADDING_WIDTH),
    BENCH_SUPPLY_DOWN_(BENCH_SUPPLY_WORK_MODE_PADDING_Y + BENCH_SUPPLY_WORK_MODE_PADDING_HEIGHT),
    BENCH_SUPPLY_WORK_MODE_INK, BENCH_SUPPLY_WORK_MODE_GROUND, 3, 24, 19, BENCH_SUPPLY_AS_RUNS_,
    BENCH_SUPPLY_STARTS_AT_X, BENCH_SUPPLY_PAD_,
};

static BENCH_SUPPLY_CONST bench_supply_part_ bench_supply_part_work_amps_ = {
    BENCH_SUPPLY_WORK_AMPS_X + 2, BENCH_SUPPLY_WORK_AMPS_BASELINE - 42,
    BENCH_SUPPLY_ACROSS_(BENCH_SUPPLY_WORK_AMPS_PADDING_X),
    BENCH_SUPPLY_DOWN_(BENCH_SUPPLY_WORK_AMPS_PADDING_Y),
    BENCH_SUPPLY_ACROSS_(BENCH_SUPPLY_WORK_AMPS_PADDING_X + BENCH_SUPPLY_WORK_AMPS_PADDING_WIDTH),
    BENCH_SUPPLY_DOWN_(BENCH_SUPPLY_WORK_AMPS_PADDING_Y + BENCH_SUPPLY_WORK_AMPS_PADDING_HEIGHT),
    BENCH_SUPPLY_WORK_AMPS_INK, BENCH_SUPPLY_WORK_AMPS_GROUND, 5, 12, 12, BENCH_SUPPLY_AS_RUNS_,
    BENCH_SUPPLY_ENDS_AT_X, BENCH_SUPPLY_PAD_,
};

static BENCH_SUPPLY_CONST bench_supply_part_ bench_supply_part_work_ampere_ = {
    BENCH_SUPPLY_WORK_AMPERE_X + 1, BENCH_SUPPLY_WORK_AMPERE_BASELINE - 24, 0, 0,
    BENCH_SUPPLY_PANEL_WIDTH, BENCH_SUPPLY_PANEL_HEIGHT, BENCH_SUPPLY_WORK_AMPERE_INK,
    BENCH_SUPPLY_WORK_AMPERE_GROUND, 1, 24, 19, BENCH_SUPPLY_AS_RUNS_, BENCH_SUPPLY_STARTS_AT_X,
    BENCH_SUPPLY_NONE_,
};

static BENCH_SUPPLY_CONST bench_supply_part_ bench_supply_part_work_set_word_ = {
    BENCH_SUPPLY_WORK_SET_WORD_X + 1, BENCH_SUPPLY_WORK_SET_WORD_BASELINE - 14, 0, 0,
    BENCH_SUPPLY_PANEL_WIDTH, BENCH_SUPPLY_PANEL_HEIGHT, BENCH_SUPPLY_WORK_SET_WORD_INK,
    BENCH_SUPPLY_WORK_SET_WORD_GROUND, 3, 68, 47, BENCH_SUPPLY_AS_REPEATS_, BENCH_SUPPLY_STARTS_AT_X,
    BENCH_SUPPLY_NONE_,
};

static BENCH_SUPPLY_CONST bench_supply_part_ bench_supply_part_work_set_volts_ = {
    BENCH_SUPPLY_WORK_SET_VOLTS_X + 1, BENCH_SUPPLY_WORK_SET_VOLTS_BASELINE - 14,
    BENCH_SUPPLY_ACROSS_(BENCH_SUPPLY_WORK_SET_VOLTS_PADDING_X),
    BENCH_SUPPLY_DOWN_(BENCH_SUPPLY_WORK_SET_VOLTS_PADDING_Y),
    BENCH_SUPPLY_ACROSS_(BENCH_SUPPLY_WORK_SET_VOLTS_PADDING_X + BENCH_SUPPLY_WORK_SET_VOLTS_PADDING_WIDTH),
    BENCH_SUPPLY_DOWN_(BENCH_SUPPLY_WORK_SET_VOLTS_PADDING_Y + BENCH_SUPPLY_WORK_SET_VOLTS_PADDING_HEIGHT),
    BENCH_SUPPLY_WORK_SET_VOLTS_INK, BENCH_SUPPLY_WORK_SET_VOLTS_GROUND, 5, 68, 47,
    BENCH_SUPPLY_AS_REPEATS_, BENCH_SUPPLY_ENDS_AT_X, BENCH_SUPPLY_PAD_,
};

static BENCH_SUPPLY_CONST bench_supply_part_ bench_supply_part_work_set_volt_ = {
    BENCH_SUPPLY_WORK_SET_VOLT_X + 1, BENCH_SUPPLY_WORK_SET_VOLT_BASELINE - 14, 0, 0,
    BENCH_SUPPLY_PANEL_WIDTH, BENCH_SUPPLY_PANEL_HEIGHT, BENCH_SUPPLY_WORK_SET_VOLT_INK,
    BENCH_SUPPLY_WORK_SET_VOLT_GROUND, 1, 68, 47, BENCH_SUPPLY_AS_REPEATS_, BENCH_SUPPLY_STARTS_AT_X,
    BENCH_SUPPLY_NONE_,
};

static BENCH_SUPPLY_CONST bench_supply_part_ bench_supply_part_work_set_amps_ = {
    BENCH_SUPPLY_WORK_SET_AMPS_X + 1, BENCH_SUPPLY_WORK_SET_AMPS_BASELINE - 14,
    BENCH_SUPPLY_ACROSS_(BENCH_SUPPLY_WORK_SET_AMPS_PADDING_X),
    BENCH_SUPPLY_DOWN_(BENCH_SUPPLY_WORK_SET_AMPS_PADDING_Y),
    BENCH_SUPPLY_ACROSS_(BENCH_SUPPLY_WORK_SET_AMPS_PADDING_X + BENCH_SUPPLY_WORK_SET_AMPS_PADDING_WIDTH),
    BENCH_SUPPLY_DOWN_(BENCH_SUPPLY_WORK_SET_AMPS_PADDING_Y + BENCH_SUPPLY_WORK_SET_AMPS_PADDING_HEIGHT),
    BENCH_SUPPLY_WORK_SET_AMPS_INK, BENCH_SUPPLY_WORK_SET_AMPS_GROUND, 5, 68, 47,
    BENCH_SUPPLY_AS_REPEATS_, BENCH_SUPPLY_ENDS_AT_X, BENCH_SUPPLY_PAD_,
};

static BENCH_SUPPLY_CONST bench_supply_part_ bench_supply_part_work_set_ampere_ = {
    BENCH_SUPPLY_WORK_SET_AMPERE_X + 1, BENCH_SUPPLY_WORK_SET_AMPERE_BASELINE - 14, 0, 0,
    BENCH_SUPPLY_PANEL_WIDTH, BENCH_SUPPLY_PANEL_HEIGHT, BENCH_SUPPLY_WORK_SET_AMPERE_INK,
    BENCH_SUPPLY_WORK_SET_AMPERE_GROUND, 1, 68, 47, BENCH_SUPPLY_AS_REPEATS_, BENCH_SUPPLY_STARTS_AT_X,
    BENCH_SUPPLY_NONE_,
};

static BENCH_SUPPLY_CONST bench_supply_part_ bench_supply_part_work_out_word_ = {
    BENCH_SUPPLY_WORK_OUT_WORD_X + 1, BENCH_SUPPLY_WORK_OUT_WORD_BASELINE - 14, 0, 0,
    BENCH_SUPPLY_PANEL_WIDTH, BENCH_SUPPLY_PANEL_HEIGHT, BENCH_SUPPLY_WORK_OUT_WORD_INK,
    BENCH_SUPPLY_WORK_OUT_WORD_GROUND, 3, 68, 47, BENCH_SUPPLY_AS_REPEATS_, BENCH_SUPPLY_STARTS_AT_X,
    BENCH_SUPPLY_NONE_,
};

static BENCH_SUPPLY_CONST bench_supply_part_ bench_supply_part_work_watts_ = {
    BENCH_SUPPLY_WORK_WATTS_X + 1, BENCH_SUPPLY_WORK_WATTS_BASELINE - 14,
    BENCH_SUPPLY_ACROSS_(BENCH_SUPPLY_WORK_WATTS_PADDING_X),
    BENCH_SUPPLY_DOWN_(BENCH_SUPPLY_WORK_WATTS_PADDING_Y),
    BENCH_SUPPLY_ACROSS_(BENCH_SUPPLY_WORK_WATTS_PADDING_X + BENCH_SUPPLY_WORK_WATTS_PADDING_WIDTH),
    BENCH_SUPPLY_DOWN_(BENCH_SUPPLY_WORK_WATTS_PADDING_Y + BENCH_SUPPLY_WORK_WATTS_PADDING_HEIGHT),
    BENCH_SUPPLY_WORK_WATTS_INK, BENCH_SUPPLY_WORK_WATTS_GROUND, 5, 68, 47, BENCH_SUPPLY_AS_REPEATS_,
    BENCH_SUPPLY_ENDS_AT_X, BENCH_SUPPLY_PAD_,
};

static BENCH_SUPPLY_CONST bench_supply_part_ bench_supply_part_work_watt_ = {
    BENCH_SUPPLY_WORK_WATT_X + 1, BENCH_SUPPLY_WORK_WATT_BASELINE - 14, 0, 0, BENCH_SUPPLY_PANEL_WIDTH,
    BENCH_SUPPLY_PANEL_HEIGHT, BENCH_SUPPLY_WORK_WATT_INK, BENCH_SUPPLY_WORK_WATT_GROUND, 1, 68, 47,
    BENCH_SUPPLY_AS_REPEATS_, BENCH_SUPPLY_STARTS_AT_X, BENCH_SUPPLY_NONE_,
};

static BENCH_SUPPLY_CONST bench_supply_part_ bench_supply_part_work_sink_ = {
    BENCH_SUPPLY_WORK_SINK_X + 1, BENCH_SUPPLY_WORK_SINK_BASELINE - 14,
    BENCH_SUPPLY_ACROSS_(BENCH_SUPPLY_WORK_SINK_PADDING_X),
    BENCH_SUPPLY_DOWN_(BENCH_SUPPLY_WORK_SINK_PADDING_Y),
    BENCH_SUPPLY_ACROSS_(BENCH_SUPPLY_WORK_SINK_PADDING_X + BENCH_SUPPLY_WORK_SINK_PADDING_WIDTH),
    BENCH_SUPPLY_DOWN_(BENCH_SUPPLY_WORK_SINK_PADDING_Y + BENCH_SUPPLY_WORK_SINK_PADDING_HEIGHT),
    BENCH_SUPPLY_WORK_SINK_INK, BENCH_SUPPLY_WORK_SINK_GROUND, 3, 68, 47, BENCH_SUPPLY_AS_REPEATS_,
    BENCH_SUPPLY_ENDS_AT_X, BENCH_SUPPLY_PAD_,
};

static BENCH_SUPPLY_CONST bench_supply_part_ bench_supply_part_work_sink_word_ = {
    BENCH_SUPPLY_WORK_SINK_WORD_X + 1, BENCH_SUPPLY_WORK_SINK_WORD_BASELINE - 14, 0, 0,
    BENCH_SUPPLY_PANEL_WIDTH, BENCH_SUPPLY_PANEL_HEIGHT, BENCH_SUPPLY_WORK_SINK_WORD_INK,
    BENCH_SUPPLY_WORK_SINK_WORD_GROUND, 4, 68, 47, BENCH_SUPPLY_AS_REPEATS_, BENCH_SUPPLY_STARTS_AT_X,
    BENCH_SUPPLY_NONE_,
};

static BENCH_SUPPLY_CONST bench_supply_part_ bench_supply_part_work_degree_ = {
    BENCH_SUPPLY_WORK_DEGREE_X + 1, BENCH_SUPPLY_WORK_DEGREE_BASELINE - 14, 0, 0,
    BENCH_SUPPLY_PANEL_WIDTH, BENCH_SUPPLY_PANEL_HEIGHT, BENCH_SUPPLY_WORK_DEGREE_INK,
    BENCH_SUPPLY_WORK_DEGREE_GROUND, 3, 68, 47, BENCH_SUPPLY_AS_REPEATS_, BENCH_SUPPLY_STARTS_AT_X,
    BENCH_SUPPLY_NONE_,
};

static BENCH_SUPPLY_CONST bench_supply_part_ bench_supply_part_fault_title_ = {
    BENCH_SUPPLY_FAULT_TITLE_X + 1, BENCH_SUPPLY_FAULT_TITLE_BASELINE - 24, 0, 0,
    BENCH_SUPPLY_PANEL_WIDTH, BENCH_SUPPLY_PANEL_HEIGHT, BENCH_SUPPLY_FAULT_TITLE_INK,
    BENCH_SUPPLY_FAULT_TITLE_GROUND, 13, 24, 19, BENCH_SUPPLY_AS_RUNS_, BENCH_SUPPLY_CENTRED_ON_X,
    BENCH_SUPPLY_NONE_,
};

static BENCH_SUPPLY_CONST bench_supply_part_ bench_supply_part_fault_reason_ = {
    BENCH_SUPPLY_FAULT_REASON_X + 1, BENCH_SUPPLY_FAULT_REASON_BASELINE - 15,
    BENCH_SUPPLY_ACROSS_(BENCH_SUPPLY_FAULT_REASON_PADDING_X),
    BENCH_SUPPLY_DOWN_(BENCH_SUPPLY_FAULT_REASON_PADDING_Y),
    BENCH_SUPPLY_ACROSS_(BENCH_SUPPLY_FAULT_REASON_PADDING_X + BENCH_SUPPLY_FAULT_REASON_PADDING_WIDTH),
    BENCH_SUPPLY_DOWN_(BENCH_SUPPLY_FAULT_REASON_PADDING_Y + BENCH_SUPPLY_FAULT_REASON_PADDING_HEIGHT),
    BENCH_SUPPLY_FAULT_REASON_INK, BENCH_SUPPLY_FAULT_REASON_GROUND, 20, 43, 25,
    BENCH_SUPPLY_AS_REPEATS_, BENCH_SUPPLY_CENTRED_ON_X, BENCH_SUPPLY_PAD_,
};

static BENCH_SUPPLY_CONST bench_supply_part_ bench_supply_part_fault_at_word_ = {
    BENCH_SUPPLY_FAULT_AT_WORD_X + 1, BENCH_SUPPLY_FAULT_AT_WORD_BASELINE - 14, 0, 0,
    BENCH_SUPPLY_PANEL_WIDTH, BENCH_SUPPLY_PANEL_HEIGHT, BENCH_SUPPLY_FAULT_AT_WORD_INK,
    BENCH_SUPPLY_FAULT_AT_WORD_GROUND, 2, 68, 47, BENCH_SUPPLY_AS_REPEATS_, BENCH_SUPPLY_STARTS_AT_X,
    BENCH_SUPPLY_NONE_,
};

static BENCH_SUPPLY_CONST bench_supply_part_ bench_supply_part_fault_at_volts_ = {
    BENCH_SUPPLY_FAULT_AT_VOLTS_X + 1, BENCH_SUPPLY_FAULT_AT_VOLTS_BASELINE - 14,
    BENCH_SUPPLY_ACROSS_(BENCH_SUPPLY_FAULT_AT_VOLTS_PADDING_X),
    BENCH_SUPPLY_DOWN_(BENCH_SUPPLY_FAULT_AT_VOLTS_PADDING_Y),
    BENCH_SUPPLY_ACROSS_(BENCH_SUPPLY_FAULT_AT_VOLTS_PADDING_X + BENCH_SUPPLY_FAULT_AT_VOLTS_PADDING_WIDTH),
    BENCH_SUPPLY_DOWN_(BENCH_SUPPLY_FAULT_AT_VOLTS_PADDING_Y + BENCH_SUPPLY_FAULT_AT_VOLTS_PADDING_HEIGHT),
    BENCH_SUPPLY_FAULT_AT_VOLTS_INK, BENCH_SUPPLY_FAULT_AT_VOLTS_GROUND, 7, 68, 47,
    BENCH_SUPPLY_AS_REPEATS_, BENCH_SUPPLY_ENDS_AT_X, BENCH_SUPPLY_PAD_,
};

static BENCH_SUPPLY_CONST bench_supply_part_ bench_supply_part_fault_advice_ = {
    BENCH_SUPPLY_FAULT_ADVICE_X + 1, BENCH_SUPPLY_FAULT_ADVICE_BASELINE - 14, 0, 0,
    BENCH_SUPPLY_PANEL_WIDTH, BENCH_SUPPLY_PANEL_HEIGHT, BENCH_SUPPLY_FAULT_ADVICE_INK,
    BENCH_SUPPLY_FAULT_ADVICE_GROUND, 30, 68, 47, BENCH_SUPPLY_AS_REPEATS_, BENCH_SUPPLY_CENTRED_ON_X,
    BENCH_SUPPLY_NONE_,
};


/* ---- Drawing: one pass over a text or an icon, every pixel painted once, no buffer ------------------------- */

typedef int bench_supply_px_; /* a place in pixels; 16 bits are enough for every text of this layout */
typedef uint32_t bench_supply_count_; /* pixels of the panel */

static void bench_supply_window_(const bench_supply_port *port, bench_supply_px_ x, bench_supply_px_ y, bench_supply_px_ width, bench_supply_px_ height)
{
    port->window(port->context, (uint16_t)x, (uint16_t)y, (uint16_t)width, (uint16_t)height);
}

static void bench_supply_run_(const bench_supply_port *port, uint16_t colour, bench_supply_count_ count)
{
#ifdef BENCH_SUPPLY_BLUE_FIRST
    colour = (uint16_t)(colour >> 11 | (colour & 0x07E0u) | (colour & 31u) << 11);
#endif
#ifdef BENCH_SUPPLY_LOW_BYTE_FIRST
    colour = (uint16_t)(colour >> 8 | (colour & 0xFFu) << 8);
#endif
    port->run(port->context, colour, count);
}

/* Fill a rectangle that lies on the panel. */
static void bench_supply_fill_(const bench_supply_port *port, bench_supply_px_ x, bench_supply_px_ y, bench_supply_px_ width, bench_supply_px_ height, uint16_t colour)
{
    const bench_supply_count_ count = (bench_supply_count_)((bench_supply_count_)width * (bench_supply_count_)height);

    if (count) {
        bench_supply_window_(port, x, y, width, height);
        bench_supply_run_(port, colour, count);
    }
}

/* Fill what lies on the panel of a rectangle given by constants. */
#define BENCH_SUPPLY_FILL_(port, x, y, width, height, colour)                                                       \
    bench_supply_fill_(port, BENCH_SUPPLY_ACROSS_(x), BENCH_SUPPLY_DOWN_(y), BENCH_SUPPLY_ACROSS_((x) + (width)) - BENCH_SUPPLY_ACROSS_(x),             \
              BENCH_SUPPLY_DOWN_((y) + (height)) - BENCH_SUPPLY_DOWN_(y), colour)

/* Fetch a constant into memory. */
static void bench_supply_load_(void *to, const void *from, uint8_t bytes)
{
    while (bytes--)
        ((uint8_t *)to)[bytes] = BENCH_SUPPLY_READ8((const uint8_t *)from + bytes);
}

typedef unsigned bench_supply_bit_; /* a bit within one bitmap */
#define BENCH_SUPPLY_FULL_(part) ((1u << BENCH_SUPPLY_DEPTH_(part)) - 1u) /* the level of pure ink */

typedef struct bench_supply_walk_ {   /* a place in a text */
    bench_supply_glyph_ glyph;        /* the glyph at the pen */
    uint8_t place;  /* its place among all, from 1; 0 for none */
    bench_supply_px_ pen;
    const char *next;
} bench_supply_walk_;

typedef struct bench_supply_pass_ {
    bench_supply_walk_ walk, first; /* where it is; where it begins: before the first glyph */
    bench_supply_part_ part;
    uint16_t ink, colour; /* of the part; of the run that is not yet sent */
    bench_supply_count_ count;     /* length of that run */
    bench_supply_px_ x, y;         /* where the next pixel goes */
    const char *end;
    const bench_supply_port *port;
    unsigned bits; /* where the pixels of the glyph's rows begin */
    uint8_t level; /* of the run before it */
    uint16_t half, row_end; /* the next half of a byte of the bitmaps; where the row ends */
    uint8_t opaque; /* whether ground is painted too */
    uint8_t fixed; /* whether the text lies among the constants */
#ifndef BENCH_SUPPLY_NO_CHANGES
    uint8_t looking; /* whether pixels are gathered in `seen`, the last lowest, and not painted */
    uint8_t seen;
#endif
} bench_supply_pass_;

#define BENCH_SUPPLY_OPAQUE_(pass) ((pass)->opaque)
#define BENCH_SUPPLY_CHAR_(pass, at) \
    (BENCH_SUPPLY_APART_ && (pass)->fixed ? (uint8_t)BENCH_SUPPLY_READ8(at) : *(const uint8_t *)(at))

/* Return the place of a code in an ascending table, counted from 1, or 0 where it is not there. */
static unsigned bench_supply_find_(const uint16_t *codes, unsigned count, uint16_t code)
{
    unsigned low = 0, half;

    while (count > 1) {
        half = count / 2;
        if (BENCH_SUPPLY_READ16(codes + low + half) <= code)
            low += half;
        count -= half;
    }
    return BENCH_SUPPLY_READ16(codes + low) == code ? low + 1 : 0;
}

/* Go on to the next glyph of the text; 0 at its end. A character is its bytes, one after the other as a number;
   those without a glyph are passed over. */
static unsigned bench_supply_step_(bench_supply_pass_ *pass)
{
    bench_supply_walk_ *const walk = &pass->walk;
    unsigned place;

    walk->pen += walk->glyph.advance;
    while (walk->next != pass->end) {
        uint16_t code = BENCH_SUPPLY_CHAR_(pass, walk->next++);

        if (code >= 0xC0 && walk->next != pass->end && (BENCH_SUPPLY_CHAR_(pass, walk->next) & 0xC0) == 0x80)
            code = (uint16_t)(code << 8 | BENCH_SUPPLY_CHAR_(pass, walk->next++));
        place = bench_supply_find_(bench_supply_codes_ + BENCH_SUPPLY_FIRST_(&pass->part), BENCH_SUPPLY_GLYPHS_(&pass->part), code);
        if (place) {
            place += BENCH_SUPPLY_FIRST_(&pass->part);
            bench_supply_load_(&walk->glyph, bench_supply_glyphs_ + place - 1, sizeof walk->glyph);
            walk->place = (uint8_t)place;
            return 1;
        }
    }
    return 0;
}

/* Send the run that is not yet sent. */
static void bench_supply_flush_(bench_supply_pass_ *pass)
{
    if (pass->count) {
        if (!BENCH_SUPPLY_OPAQUE_(pass))
            bench_supply_window_(pass->port, pass->x - (bench_supply_px_)pass->count, pass->y, (bench_supply_px_)pass->count, 1);
        bench_supply_run_(pass->port, pass->colour, pass->count);
    }
    pass->count = 0;
}

/* Paint the row up to x with one level; neighbours of one colour become one run. */
static void bench_supply_to_(bench_supply_pass_ *pass, bench_supply_px_ x, unsigned level)
{
    uint16_t colour = level ? pass->ink : BENCH_SUPPLY_GROUND_(&pass->part);

    if (x > (bench_supply_px_)pass->part.right)
        x = pass->part.right;
    if (x <= pass->x)
        return;
#ifndef BENCH_SUPPLY_NO_CHANGES
    if (pass->looking) {
        for (; pass->x < x; ++pass->x)
            pass->seen = (uint8_t)((pass->seen << BENCH_SUPPLY_DEPTH_(&pass->part)) | (uint8_t)level);
        return;
    }
#endif
    if (colour != pass->colour || (!level && !BENCH_SUPPLY_OPAQUE_(pass)))
        bench_supply_flush_(pass);
    if (level || BENCH_SUPPLY_OPAQUE_(pass))
        pass->count = (bench_supply_count_)(pass->count + (bench_supply_count_)(x - pass->x));
    pass->colour = colour;
    pass->x = x;
}

/* Find the pixels of the glyph at the pen, and return which of the rows there a row of it is. */
static unsigned bench_supply_kept_(bench_supply_pass_ *pass, unsigned row)
{
    const uint8_t *flags = bench_supply_bits_ + pass->walk.glyph.first_byte;
    unsigned n, kept = 0;

    pass->bits = pass->walk.glyph.first_byte;
    if (BENCH_SUPPLY_FORM_(&pass->part) != BENCH_SUPPLY_AS_REPEATS_)
        return row;
    pass->bits += ((unsigned)pass->walk.glyph.height + 7u) >> 3;
    for (n = 1; n <= row; ++n)
        kept += (((unsigned)BENCH_SUPPLY_READ8(flags + (n >> 3)) >> (n & 7)) & 1u) ^ 1u;
    return kept;
}

/* Return the level of a pixel of the glyph at the pen. */
static unsigned bench_supply_level_(const bench_supply_pass_ *pass, bench_supply_bit_ pixel)
{
    const uint8_t *bits = bench_supply_bits_ + pass->bits;

    pixel *= BENCH_SUPPLY_DEPTH_(&pass->part);
    return ((unsigned)BENCH_SUPPLY_READ8(bits + (pixel >> 3)) >> (pixel & 7)) & BENCH_SUPPLY_FULL_(&pass->part);
}

/* Take a half of a byte off the bitmaps. */
static unsigned bench_supply_half_(bench_supply_pass_ *pass)
{
    const unsigned byte = BENCH_SUPPLY_READ8(bench_supply_bits_ + (pass->half >> 1));

    return pass->half++ & 1 ? byte >> 4 : byte & 15;
}

/* Take a number off the bitmaps: a half, and as long as it is 15 the next half is added. */
static bench_supply_px_ bench_supply_number_(bench_supply_pass_ *pass)
{
    bench_supply_px_ number = 0;
    unsigned half;

    do {
        half = bench_supply_half_(pass);
        number += (bench_supply_px_)half;
    } while (half == 15);
    return number;
}

/* Go to the runs of a row of the glyph at the pen. Before each row stands 0, where it is as the row before, or 1 and
   how many halves it takes. */
static void bench_supply_seek_(bench_supply_pass_ *pass, unsigned row)
{
    uint16_t begin = 0;
    bench_supply_px_ halves;

    pass->half = pass->row_end = (uint16_t)((uint16_t)pass->walk.glyph.first_byte << 1);
    do {
        halves = bench_supply_number_(pass);
        if (halves) {
            begin = pass->half;
            pass->half = (uint16_t)(begin + (unsigned)halves - 1u);
            pass->row_end = pass->half;
        }
    } while (row--);
    pass->half = begin;
    pass->level = 1;
}

/* Take a run off the row: set its level and return its length. */
static bench_supply_px_ bench_supply_next_(bench_supply_pass_ *pass)
{
    if (BENCH_SUPPLY_DEPTH_(&pass->part) == 1) {
        pass->level ^= 1;
        return bench_supply_number_(pass);
    }
    pass->level = (uint8_t)bench_supply_half_(pass);
    return pass->level == 0 || pass->level == 15 ? bench_supply_number_(pass) + 1 : 1;
}

/* Paint a row of the area. No two glyphs of a text lie over one another. */
static void bench_supply_row_(bench_supply_pass_ *pass)
{
    const bench_supply_glyph_ *const glyph = &pass->walk.glyph;

    pass->walk = pass->first;
    while (pass->x < pass->part.right && bench_supply_step_(pass)) {
        const unsigned row = (unsigned)(pass->y - pass->part.y) - glyph->drop;
        bench_supply_px_ x = pass->walk.pen + glyph->left;

        if (row >= (unsigned)glyph->height)
            continue;
        bench_supply_to_(pass, x, 0);
        if (BENCH_SUPPLY_FORM_(&pass->part) == BENCH_SUPPLY_AS_RUNS_) {
            bench_supply_seek_(pass, row);
            while (pass->half != pass->row_end) {
                x += bench_supply_next_(pass);
                bench_supply_to_(pass, x, pass->level);
            }
        } else {
            const bench_supply_bit_ first = (bench_supply_bit_)bench_supply_kept_(pass, row) * (bench_supply_bit_)glyph->width;
            bench_supply_bit_ pixel;

            for (pixel = first; pixel != first + (bench_supply_bit_)glyph->width; ++pixel)
                bench_supply_to_(pass, ++x, bench_supply_level_(pass, pixel));
        }
    }
    bench_supply_to_(pass, pass->part.right, 0);
}

/* Paint the area of the part. */
static void bench_supply_paint_(bench_supply_pass_ *pass)
{
    const bench_supply_px_ left = pass->part.left, top = pass->part.top;

    pass->count = 0;
    pass->colour = 0;
    if (left >= pass->part.right || top >= pass->part.bottom)
        return;
    if (BENCH_SUPPLY_OPAQUE_(pass))
        bench_supply_window_(pass->port, left, top, pass->part.right - left, pass->part.bottom - top);
    for (pass->y = top; pass->y < pass->part.bottom; ++pass->y) {
        pass->x = left;
        bench_supply_row_(pass);
        if (!BENCH_SUPPLY_OPAQUE_(pass))
            bench_supply_flush_(pass);
    }
    bench_supply_flush_(pass);
}
#ifndef BENCH_SUPPLY_NO_CHANGES

/* Paint a rectangle. */
static void bench_supply_paint_area_(bench_supply_pass_ *pass, bench_supply_px_ left, bench_supply_px_ top, bench_supply_px_ right, bench_supply_px_ bottom)
{
    pass->part.left = (int16_t)left;
    pass->part.top = (int16_t)top;
    pass->part.right = (int16_t)right;
    pass->part.bottom = (int16_t)bottom;
    bench_supply_paint_(pass);
}
#endif

/* Get ready to paint a text; `fixed` tells that it lies among the constants. Return its width. */
static bench_supply_px_ bench_supply_open_(bench_supply_pass_ *pass, const bench_supply_port *port, const bench_supply_part_ *part, const char *text, uint8_t fixed, const uint16_t *ink)
{
    bench_supply_px_ width;
    unsigned rest;

    bench_supply_load_(&pass->part, part, sizeof pass->part);
    pass->port = port;
    pass->ink = ink ? BENCH_SUPPLY_READ16(ink) : BENCH_SUPPLY_INK_(&pass->part);
    pass->fixed = fixed;
#ifndef BENCH_SUPPLY_NO_CHANGES
    pass->looking = 0;
#endif
    pass->end = text ? text : "";
    pass->walk.next = pass->end;
    pass->walk.pen = 0;
    pass->walk.place = 0;
    pass->walk.glyph.advance = 0;
    pass->first = pass->walk;
    for (rest = BENCH_SUPPLY_LONGEST_(&pass->part); rest && BENCH_SUPPLY_CHAR_(pass, pass->end); --rest)
        ++pass->end;
    while (bench_supply_step_(pass)) {
    }
    width = pass->walk.pen;
    pass->first.pen = pass->part.x;
    pass->first.pen -= (width * BENCH_SUPPLY_ALIGNMENT_(&pass->part) - (width * BENCH_SUPPLY_ALIGNMENT_(&pass->part) & 1)) / 2;
    return width;
}

/* Show a text; `fixed` tells that it lies among the constants. */
static void bench_supply_show_(const bench_supply_port *port, const bench_supply_part_ *part, const char *text, uint8_t fixed, const uint16_t *ink)
{
    bench_supply_pass_ pass;

    (void)bench_supply_open_(&pass, port, part, text, fixed, ink);
    pass.opaque = BENCH_SUPPLY_CLEARING_(&pass.part) == BENCH_SUPPLY_PAD_;
    bench_supply_paint_(&pass);
}

/* Show an icon: a text of one character, its code the number of the state, from 1. */
static void bench_supply_show_icon_(const bench_supply_port *port, const bench_supply_part_ *part, unsigned states, unsigned state, const uint16_t *inks)
{
    char text[2];

    if (state >= states)
        return;
    text[0] = (char)(state + 1);
    text[1] = '\0';
    bench_supply_show_(port, part, text, 0, inks ? inks + state : NULL);
}

#ifndef BENCH_SUPPLY_NO_CHANGES
/* ---- Changes: of a part that is shown already, only what differs ------------------------------------------- */

#define BENCH_SUPPLY_STRIP_ 8 /* columns looked at together */
#define BENCH_SUPPLY_COST_  6 /* as many pixels take as long as opening a window */

/* Return the levels of a row of a strip. */
static uint8_t bench_supply_look_(bench_supply_pass_ *pass, bench_supply_px_ left, bench_supply_px_ right, bench_supply_px_ y)
{
    pass->seen = 0;
    pass->x = left;
    pass->y = y;
    pass->part.right = (int16_t)right;
    pass->looking = 1;
    bench_supply_row_(pass);
    pass->looking = 0;
    return pass->seen;
}

/* Go through a strip and paint the pixels that differ, rows that are cheaper together in one window. */
static void bench_supply_change_strip_(bench_supply_pass_ *former, bench_supply_pass_ *now, const bench_supply_walk_ *whole, bench_supply_px_ left, bench_supply_px_ right)
{
    const bench_supply_px_ top = former->part.top, bottom = former->part.bottom;
    const bench_supply_walk_ part_of_it = now->first;
    bench_supply_px_ y, begin, end, band_left = 0, band_right = 0, band_top = 0, band_bottom = 0;

    for (y = top;; ++y) {
        uint8_t differ = 0;

        begin = end = right;
        if (y < bottom)
            differ = bench_supply_look_(former, left, right, y) ^ bench_supply_look_(now, left, right, y);
        if (differ) {
            for (; !(differ & BENCH_SUPPLY_FULL_(&now->part)); --end)
                differ = (uint8_t)(differ >> BENCH_SUPPLY_DEPTH_(&now->part));
            for (begin = end; differ; --begin)
                differ = (uint8_t)(differ >> BENCH_SUPPLY_DEPTH_(&now->part));
        }
        if (band_top < band_bottom) {
            const bench_supply_px_ least = begin < band_left ? begin : band_left, most = end > band_right ? end : band_right;

            if (begin < end && (most - least) * (y + 1 - band_top) <=
                                   (band_right - band_left) * (band_bottom - band_top) + BENCH_SUPPLY_COST_ + end - begin) {
                band_left = least;
                band_right = most;
                band_bottom = y + 1;
                continue;
            }
            if (begin < end || y == bottom) {
                now->first = *whole;
                bench_supply_paint_area_(now, band_left, band_top, band_right, band_bottom);
                now->first = part_of_it;
                band_bottom = band_top;
            }
        }
        if (y == bottom)
            return;
        if (begin < end) {
            band_left = begin;
            band_right = end;
            band_top = y;
            band_bottom = y + 1;
        }
    }
}

/* Bring a text that is shown up to date. */
static void bench_supply_change_(const bench_supply_port *port, const bench_supply_part_ *part, const char *shown, const char *text, const uint16_t *ink)
{
    bench_supply_pass_ former, now;
    bench_supply_walk_ whole;
    bench_supply_px_ left, right, until;
    unsigned more, more_now;

    if (!shown) {
        bench_supply_show_(port, part, text, 0, ink);
        return;
    }
    (void)bench_supply_open_(&former, port, part, shown, 0, ink);
    (void)bench_supply_open_(&now, port, part, text, 0, ink);
    now.opaque = 1;
    whole = now.first;
    former.walk = former.first;
    now.walk = now.first;
    left = now.part.right;
    right = now.part.left;
    more = bench_supply_step_(&former);
    more_now = bench_supply_step_(&now);
    while (more || more_now) {
        bench_supply_walk_ *walk = &now.walk;

        if (more && more_now && former.walk.place == now.walk.place && former.walk.pen == now.walk.pen) {
            if (left >= right) { /* nothing differs so far: glyphs before this one need not be looked at */
                former.first = former.walk;
                now.first = now.walk;
            }
            more = bench_supply_step_(&former);
            more_now = bench_supply_step_(&now);
            continue;
        }
        if (more && (!more_now || former.walk.pen <= now.walk.pen))
            walk = &former.walk;
        until = walk->pen + walk->glyph.left;
        if (until < left)
            left = until;
        until += walk->glyph.width;
        if (until > right)
            right = until;
        if (walk == &former.walk)
            more = bench_supply_step_(&former);
        else
            more_now = bench_supply_step_(&now);
    }
    if (left < now.part.left)
        left = now.part.left;
    if (right > now.part.right)
        right = now.part.right;
    for (; left < right; left = until) {
        until = right - left > BENCH_SUPPLY_STRIP_ ? left + BENCH_SUPPLY_STRIP_ : right;
        bench_supply_change_strip_(&former, &now, &whole, left, until);
    }
}

/* Bring an icon that is shown up to date; all of it where the inks of the two states differ. */
static void bench_supply_change_icon_(const bench_supply_port *port, const bench_supply_part_ *part, unsigned states, unsigned former,
                             unsigned state, const uint16_t *inks)
{
    char shown[2], text[2];

    if (state >= states)
        return;
    shown[0] = (char)(former + 1);
    text[0] = (char)(state + 1);
    shown[1] = text[1] = '\0';
    if (former < states && inks && BENCH_SUPPLY_READ16(inks + former) != BENCH_SUPPLY_READ16(inks + state))
        former = states;
    bench_supply_change_(port, part, former < states ? shown : NULL, text, inks ? inks + state : NULL);
}
#endif /* BENCH_SUPPLY_NO_CHANGES */

/* ---- Screens ----------------------------------------------------------------------------------------------- */

void bench_supply_start_draw(const bench_supply_port *port, const bench_supply_start_values *values)
{
    BENCH_SUPPLY_FILL_(port, 0, 0, BENCH_SUPPLY_PANEL_WIDTH, BENCH_SUPPLY_PANEL_HEIGHT, BENCH_SUPPLY_START_GROUND);
    bench_supply_show_(port, &bench_supply_part_start_title_, bench_supply_text_start_title_, 1, NULL);
    BENCH_SUPPLY_FILL_(port, BENCH_SUPPLY_START_LINE_X, BENCH_SUPPLY_START_LINE_Y, BENCH_SUPPLY_START_LINE_LENGTH,
                       BENCH_SUPPLY_START_LINE_THICKNESS, BENCH_SUPPLY_START_LINE_INK);
    bench_supply_start_message_update(port, values->message);
    bench_supply_show_(port, &bench_supply_part_start_caution_, bench_supply_text_start_caution_, 1, NULL);
}

void bench_supply_start_message_update(const bench_supply_port *port, const char *text)
{
    bench_supply_show_(port, &bench_supply_part_start_message_, text, 0, NULL);
}

void bench_supply_work_draw(const bench_supply_port *port, const bench_supply_work_values *values)
{
    BENCH_SUPPLY_FILL_(port, 0, 0, BENCH_SUPPLY_PANEL_WIDTH, BENCH_SUPPLY_PANEL_HEIGHT, BENCH_SUPPLY_WORK_GROUND);
    BENCH_SUPPLY_FILL_(port, BENCH_SUPPLY_WORK_BAR_X, BENCH_SUPPLY_WORK_BAR_Y, BENCH_SUPPLY_WORK_BAR_WIDTH,
                       BENCH_SUPPLY_WORK_BAR_HEIGHT, BENCH_SUPPLY_WORK_BAR_FILL);
    bench_supply_show_(port, &bench_supply_part_work_title_, bench_supply_text_work_title_, 1, NULL);
    bench_supply_work_network_update(port, values->network);
    bench_supply_work_keys_update(port, values->keys);
    bench_supply_work_volts_update(port, values->volts);
    bench_supply_show_(port, &bench_supply_part_work_volt_, bench_supply_text_work_volt_, 1, NULL);
    bench_supply_work_mode_update(port, values->mode);
    bench_supply_work_amps_update(port, values->amps);
    bench_supply_show_(port, &bench_supply_part_work_ampere_, bench_supply_text_work_ampere_, 1, NULL);
    BENCH_SUPPLY_FILL_(port, BENCH_SUPPLY_WORK_LINE_X, BENCH_SUPPLY_WORK_LINE_Y, BENCH_SUPPLY_WORK_LINE_LENGTH,
                       BENCH_SUPPLY_WORK_LINE_THICKNESS, BENCH_SUPPLY_WORK_LINE_INK);
    bench_supply_show_(port, &bench_supply_part_work_set_word_, bench_supply_text_work_set_word_, 1, NULL);
    bench_supply_work_set_volts_update(port, values->set_volts);
    bench_supply_show_(port, &bench_supply_part_work_set_volt_, bench_supply_text_work_set_volt_, 1, NULL);
    bench_supply_work_set_amps_update(port, values->set_amps);
    bench_supply_show_(port, &bench_supply_part_work_set_ampere_, bench_supply_text_work_set_ampere_, 1, NULL);
    bench_supply_show_(port, &bench_supply_part_work_out_word_, bench_supply_text_work_out_word_, 1, NULL);
    bench_supply_work_watts_update(port, values->watts);
    bench_supply_show_(port, &bench_supply_part_work_watt_, bench_supply_text_work_watt_, 1, NULL);
    bench_supply_work_sink_update(port, values->sink);
    bench_supply_show_(port, &bench_supply_part_work_sink_word_, bench_supply_text_work_sink_word_, 1, NULL);
    bench_supply_show_(port, &bench_supply_part_work_degree_, bench_supply_text_work_degree_, 1, NULL);
}

void bench_supply_work_network_update(const bench_supply_port *port, uint8_t state)
{
    bench_supply_show_icon_(port, &bench_supply_part_work_network_, BENCH_SUPPLY_WORK_NETWORK_STATES, state,
                            bench_supply_inks_work_network_);
}

void bench_supply_work_keys_update(const bench_supply_port *port, uint8_t state)
{
    bench_supply_show_icon_(port, &bench_supply_part_work_keys_, BENCH_SUPPLY_WORK_KEYS_STATES, state,
                            bench_supply_inks_work_keys_);
}

void bench_supply_work_volts_update(const bench_supply_port *port, const char *text)
{
    bench_supply_show_(port, &bench_supply_part_work_volts_, text, 0, NULL);
}

void bench_supply_work_mode_update(const bench_supply_port *port, const char *text)
{
    bench_supply_show_(port, &bench_supply_part_work_mode_, text, 0, NULL);
}

void bench_supply_work_amps_update(const bench_supply_port *port, const char *text)
{
    bench_supply_show_(port, &bench_supply_part_work_amps_, text, 0, NULL);
}

void bench_supply_work_set_volts_update(const bench_supply_port *port, const char *text)
{
    bench_supply_show_(port, &bench_supply_part_work_set_volts_, text, 0, NULL);
}

void bench_supply_work_set_amps_update(const bench_supply_port *port, const char *text)
{
    bench_supply_show_(port, &bench_supply_part_work_set_amps_, text, 0, NULL);
}

void bench_supply_work_watts_update(const bench_supply_port *port, const char *text)
{
    bench_supply_show_(port, &bench_supply_part_work_watts_, text, 0, NULL);
}

void bench_supply_work_sink_update(const bench_supply_port *port, const char *text)
{
    bench_supply_show_(port, &bench_supply_part_work_sink_, text, 0, NULL);
}

void bench_supply_fault_draw(const bench_supply_port *port, const bench_supply_fault_values *values)
{
    BENCH_SUPPLY_FILL_(port, 0, 0, BENCH_SUPPLY_PANEL_WIDTH, BENCH_SUPPLY_PANEL_HEIGHT, BENCH_SUPPLY_FAULT_GROUND);
    BENCH_SUPPLY_FILL_(port, BENCH_SUPPLY_FAULT_BANNER_X, BENCH_SUPPLY_FAULT_BANNER_Y,
                       BENCH_SUPPLY_FAULT_BANNER_WIDTH, BENCH_SUPPLY_FAULT_BANNER_HEIGHT,
                       BENCH_SUPPLY_FAULT_BANNER_FILL);
    bench_supply_show_(port, &bench_supply_part_fault_title_, bench_supply_text_fault_title_, 1, NULL);
    bench_supply_fault_reason_update(port, values->reason);
    bench_supply_show_(port, &bench_supply_part_fault_at_word_, bench_supply_text_fault_at_word_, 1, NULL);
    bench_supply_fault_at_volts_update(port, values->at_volts);
    bench_supply_show_(port, &bench_supply_part_fault_advice_, bench_supply_text_fault_advice_, 1, NULL);
}

void bench_supply_fault_reason_update(const bench_supply_port *port, const char *text)
{
    bench_supply_show_(port, &bench_supply_part_fault_reason_, text, 0, NULL);
}

void bench_supply_fault_at_volts_update(const bench_supply_port *port, const char *text)
{
    bench_supply_show_(port, &bench_supply_part_fault_at_volts_, text, 0, NULL);
}

#ifndef BENCH_SUPPLY_NO_CHANGES
void bench_supply_start_message_change(const bench_supply_port *port, const char *former, const char *text)
{
    bench_supply_change_(port, &bench_supply_part_start_message_, former, text, NULL);
}

void bench_supply_work_network_change(const bench_supply_port *port, uint8_t former, uint8_t state)
{
    bench_supply_change_icon_(port, &bench_supply_part_work_network_, BENCH_SUPPLY_WORK_NETWORK_STATES, former,
                              state, bench_supply_inks_work_network_);
}

void bench_supply_work_keys_change(const bench_supply_port *port, uint8_t former, uint8_t state)
{
    bench_supply_change_icon_(port, &bench_supply_part_work_keys_, BENCH_SUPPLY_WORK_KEYS_STATES, former, state,
                              bench_supply_inks_work_keys_);
}

void bench_supply_work_volts_change(const bench_supply_port *port, const char *former, const char *text)
{
    bench_supply_change_(port, &bench_supply_part_work_volts_, former, text, NULL);
}

void bench_supply_work_mode_change(const bench_supply_port *port, const char *former, const char *text)
{
    bench_supply_change_(port, &bench_supply_part_work_mode_, former, text, NULL);
}

void bench_supply_work_amps_change(const bench_supply_port *port, const char *former, const char *text)
{
    bench_supply_change_(port, &bench_supply_part_work_amps_, former, text, NULL);
}

void bench_supply_work_set_volts_change(const bench_supply_port *port, const char *former, const char *text)
{
    bench_supply_change_(port, &bench_supply_part_work_set_volts_, former, text, NULL);
}

void bench_supply_work_set_amps_change(const bench_supply_port *port, const char *former, const char *text)
{
    bench_supply_change_(port, &bench_supply_part_work_set_amps_, former, text, NULL);
}

void bench_supply_work_watts_change(const bench_supply_port *port, const char *former, const char *text)
{
    bench_supply_change_(port, &bench_supply_part_work_watts_, former, text, NULL);
}

void bench_supply_work_sink_change(const bench_supply_port *port, const char *former, const char *text)
{
    bench_supply_change_(port, &bench_supply_part_work_sink_, former, text, NULL);
}

void bench_supply_fault_reason_change(const bench_supply_port *port, const char *former, const char *text)
{
    bench_supply_change_(port, &bench_supply_part_fault_reason_, former, text, NULL);
}

void bench_supply_fault_at_volts_change(const bench_supply_port *port, const char *former, const char *text)
{
    bench_supply_change_(port, &bench_supply_part_fault_at_volts_, former, text, NULL);
}

#endif /* BENCH_SUPPLY_NO_CHANGES */

/* ---- Texts of fields --------------------------------------------------------------------------------------- */

#ifndef BENCH_SUPPLY_NO_TEXT_FUNCTIONS
#include <float.h>
#include <stdio.h>

/* Copy a text, as much of it as there is room for; return its bytes. `fixed` tells that it lies among the constants. */
static int bench_supply_copy_(char *buffer, size_t room, const char *text, uint8_t fixed)
{
    size_t bytes = 0;

    for (; bytes + 1 < room; ++bytes, ++text) {
        buffer[bytes] = BENCH_SUPPLY_APART_ && fixed ? (char)BENCH_SUPPLY_READ8(text) : *text;
        if (!buffer[bytes])
            return (int)bytes;
    }
    buffer[bytes] = '\0';
    return (int)bytes;
}

/* Return a text of a row of texts that each end with a zero. */
static const char *bench_supply_choice_(const char *texts, int choice)
{
    for (; choice; --choice)
        while (BENCH_SUPPLY_READ8(texts++)) {
        }
    return texts;
}

typedef uint32_t bench_supply_scaled_; /* a real times a power of ten */

/* Return the size of a real times a power of ten, rounded just as the C library prints it: to the nearest whole
   number, of two as near to the even one. A double is taken apart as IEEE 754 has it, in 64 or in 32 bits. */
static bench_supply_scaled_ bench_supply_round_(double value, uint32_t scale)
{
    uint8_t odd = 0, rest = 0; /* the first bit behind the number, and whether one follows */
    unsigned n;
    int shift;
#if DBL_MANT_DIG == 53
    uint64_t bits = 0, high, low;

    for (n = 0; n < sizeof bits; ++n)
        ((uint8_t *)&bits)[n] = ((const uint8_t *)&value)[n];
    shift = (int)(bits >> 52 & 0x7FF);
    bits &= 0xFFFFFFFFFFFFFu;
    bits |= (uint64_t)(shift != 0) << 52;
    shift = 1075 - (shift ? shift : 1);
    low = (bits & 0xFFFFFFFFu) * scale;
    high = (bits >> 32) * scale + (low >> 32);
    low &= 0xFFFFFFFFu;
    for (n = 0; shift > 0 && n < 96; ++n, --shift) {
        rest |= odd;
        odd = (uint8_t)(low & 1);
        low = low >> 1 | (high & 1) << 31;
        high >>= 1;
    }
    low |= high << 32;
#elif DBL_MANT_DIG == 24
    uint32_t bits = 0;
    uint64_t low;

    for (n = 0; n < sizeof bits; ++n)
        ((uint8_t *)&bits)[n] = ((const uint8_t *)&value)[n];
    shift = (int)(bits >> 23 & 0xFF);
    bits &= 0x7FFFFFu;
    bits |= (uint32_t)(shift != 0) << 23;
    shift = 150 - (shift ? shift : 1);
    low = (uint64_t)((uint64_t)bits * scale);
    for (n = 0; shift > 0 && n < 64; ++n, --shift) {
        rest |= odd;
        odd = (uint8_t)(low & 1);
        low >>= 1;
    }
#else
#error a double of neither 64 nor 32 bits: leave the text functions out
#endif
    if (shift > 0)
        odd = 0; /* nothing is left */
    else
        low <<= -shift;
    return (bench_supply_scaled_)(low + (odd && (rest || (low & 1))));
}

/* Tell whether the sign of a real is set, of -0.0 too. */
static uint8_t bench_supply_negative_(double value)
{
    const uint16_t one = 1;

    return ((const uint8_t *)&value)[*(const uint8_t *)&one ? sizeof value - 1 : 0] >> 7;
}

/* Write a number with so many of its digits behind the point, and return where in the room it begins. */
static const char *bench_supply_decimal_(char *room, size_t bytes, bench_supply_scaled_ number, char sign, uint8_t places, size_t width)
{
    char *at = room + bytes;
    size_t count = 0;

    *--at = '\0';
    do {
        if (places && count == places)
            *--at = '.';
        *--at = (char)('0' + (char)(number % 10));
        number /= 10;
        ++count;
    } while (number || count <= places);
    for (count += (size_t)(places > 0) + (size_t)(sign != '\0'); count < width; ++count)
        *--at = '0';
    if (sign)
        *--at = sign;
    return at;
}

int bench_supply_start_message_text(char *buffer, int choice)
{
    static BENCH_SUPPLY_CONST char texts[] = "Testing itself\000Reading the calibration\000Waiting for the fan\000Joining the bench network\000Ready";

    if (choice < 0 || choice >= 5)
        return -1;
    return bench_supply_copy_(buffer, BENCH_SUPPLY_START_MESSAGE_TEXT_BYTES, bench_supply_choice_(texts, choice),
                              1);
}

int bench_supply_work_volts_text(char *buffer, double value)
{
    static BENCH_SUPPLY_CONST char fault[] = BENCH_SUPPLY_WORK_VOLTS_FAULT;
    bench_supply_scaled_ number;
    char decimal[8];
    const char *real;

    if (!(value >= BENCH_SUPPLY_WORK_VOLTS_LEAST && value <= BENCH_SUPPLY_WORK_VOLTS_GREATEST))
        return bench_supply_copy_(buffer, BENCH_SUPPLY_WORK_VOLTS_TEXT_BYTES, fault, 1);
    if (value <= 0)
        value = 0; /* -0.0 */
    number = bench_supply_round_(value, 1000u);
#if DBL_MANT_DIG == 24
    if (number > (bench_supply_negative_(value) ? 0u : 32000u))
        return bench_supply_copy_(buffer, BENCH_SUPPLY_WORK_VOLTS_TEXT_BYTES, fault, 1);
#endif
    real = bench_supply_decimal_(decimal, sizeof decimal, number, bench_supply_negative_(value) ? '-' : '\0', 3, 0);
    return snprintf(buffer, BENCH_SUPPLY_WORK_VOLTS_TEXT_BYTES, "%s", real);
}

int bench_supply_work_volts_text_scaled(char *buffer, int32_t scaled)
{
    static BENCH_SUPPLY_CONST char fault[] = BENCH_SUPPLY_WORK_VOLTS_FAULT;
    char decimal[8];
    const char *real;

    if (scaled < 0 || scaled > 32000)
        return bench_supply_copy_(buffer, BENCH_SUPPLY_WORK_VOLTS_TEXT_BYTES, fault, 1);
    real = bench_supply_decimal_(decimal, sizeof decimal, (bench_supply_scaled_)(scaled < 0 ? -scaled : scaled),
                                 scaled < 0 ? '-' : '\0', 3, 0);
    return snprintf(buffer, BENCH_SUPPLY_WORK_VOLTS_TEXT_BYTES, "%s", real);
}

int bench_supply_work_mode_text(char *buffer, int choice)
{
    static BENCH_SUPPLY_CONST char texts[] = "CV\000CC\000off";

    if (choice < 0 || choice >= 3)
        return -1;
    return bench_supply_copy_(buffer, BENCH_SUPPLY_WORK_MODE_TEXT_BYTES, bench_supply_choice_(texts, choice), 1);
}

int bench_supply_work_amps_text(char *buffer, double value)
{
    static BENCH_SUPPLY_CONST char fault[] = BENCH_SUPPLY_WORK_AMPS_FAULT;
    bench_supply_scaled_ number;
    char decimal[7];
    const char *real;

    if (!(value >= BENCH_SUPPLY_WORK_AMPS_LEAST && value <= BENCH_SUPPLY_WORK_AMPS_GREATEST))
        return bench_supply_copy_(buffer, BENCH_SUPPLY_WORK_AMPS_TEXT_BYTES, fault, 1);
    if (value <= 0)
        value = 0; /* -0.0 */
    number = bench_supply_round_(value, 1000u);
#if DBL_MANT_DIG == 24
    if (number > (bench_supply_negative_(value) ? 0u : 3200u))
        return bench_supply_copy_(buffer, BENCH_SUPPLY_WORK_AMPS_TEXT_BYTES, fault, 1);
#endif
    real = bench_supply_decimal_(decimal, sizeof decimal, number, bench_supply_negative_(value) ? '-' : '\0', 3, 0);
    return snprintf(buffer, BENCH_SUPPLY_WORK_AMPS_TEXT_BYTES, "%s", real);
}

int bench_supply_work_amps_text_scaled(char *buffer, int32_t scaled)
{
    static BENCH_SUPPLY_CONST char fault[] = BENCH_SUPPLY_WORK_AMPS_FAULT;
    char decimal[7];
    const char *real;

    if (scaled < 0 || scaled > 3200)
        return bench_supply_copy_(buffer, BENCH_SUPPLY_WORK_AMPS_TEXT_BYTES, fault, 1);
    real = bench_supply_decimal_(decimal, sizeof decimal, (bench_supply_scaled_)(scaled < 0 ? -scaled : scaled),
                                 scaled < 0 ? '-' : '\0', 3, 0);
    return snprintf(buffer, BENCH_SUPPLY_WORK_AMPS_TEXT_BYTES, "%s", real);
}

int bench_supply_work_set_volts_text(char *buffer, double value)
{
    static BENCH_SUPPLY_CONST char fault[] = BENCH_SUPPLY_WORK_SET_VOLTS_FAULT;
    bench_supply_scaled_ number;
    char decimal[7];
    const char *real;

    if (!(value >= BENCH_SUPPLY_WORK_SET_VOLTS_LEAST && value <= BENCH_SUPPLY_WORK_SET_VOLTS_GREATEST))
        return bench_supply_copy_(buffer, BENCH_SUPPLY_WORK_SET_VOLTS_TEXT_BYTES, fault, 1);
    if (value <= 0)
        value = 0; /* -0.0 */
    number = bench_supply_round_(value, 100u);
#if DBL_MANT_DIG == 24
    if (number > (bench_supply_negative_(value) ? 0u : 3200u))
        return bench_supply_copy_(buffer, BENCH_SUPPLY_WORK_SET_VOLTS_TEXT_BYTES, fault, 1);
#endif
    real = bench_supply_decimal_(decimal, sizeof decimal, number, bench_supply_negative_(value) ? '-' : '\0', 2, 0);
    return snprintf(buffer, BENCH_SUPPLY_WORK_SET_VOLTS_TEXT_BYTES, "%s", real);
}

int bench_supply_work_set_volts_text_scaled(char *buffer, int32_t scaled)
{
    static BENCH_SUPPLY_CONST char fault[] = BENCH_SUPPLY_WORK_SET_VOLTS_FAULT;
    char decimal[7];
    const char *real;

    if (scaled < 0 || scaled > 3200)
        return bench_supply_copy_(buffer, BENCH_SUPPLY_WORK_SET_VOLTS_TEXT_BYTES, fault, 1);
    real = bench_supply_decimal_(decimal, sizeof decimal, (bench_supply_scaled_)(scaled < 0 ? -scaled : scaled),
                                 scaled < 0 ? '-' : '\0', 2, 0);
    return snprintf(buffer, BENCH_SUPPLY_WORK_SET_VOLTS_TEXT_BYTES, "%s", real);
}

int bench_supply_work_set_amps_text(char *buffer, double value)
{
    static BENCH_SUPPLY_CONST char fault[] = BENCH_SUPPLY_WORK_SET_AMPS_FAULT;
    bench_supply_scaled_ number;
    char decimal[7];
    const char *real;

    if (!(value >= BENCH_SUPPLY_WORK_SET_AMPS_LEAST && value <= BENCH_SUPPLY_WORK_SET_AMPS_GREATEST))
        return bench_supply_copy_(buffer, BENCH_SUPPLY_WORK_SET_AMPS_TEXT_BYTES, fault, 1);
    if (value <= 0)
        value = 0; /* -0.0 */
    number = bench_supply_round_(value, 1000u);
#if DBL_MANT_DIG == 24
    if (number > (bench_supply_negative_(value) ? 0u : 3200u))
        return bench_supply_copy_(buffer, BENCH_SUPPLY_WORK_SET_AMPS_TEXT_BYTES, fault, 1);
#endif
    real = bench_supply_decimal_(decimal, sizeof decimal, number, bench_supply_negative_(value) ? '-' : '\0', 3, 0);
    return snprintf(buffer, BENCH_SUPPLY_WORK_SET_AMPS_TEXT_BYTES, "%s", real);
}

int bench_supply_work_set_amps_text_scaled(char *buffer, int32_t scaled)
{
    static BENCH_SUPPLY_CONST char fault[] = BENCH_SUPPLY_WORK_SET_AMPS_FAULT;
    char decimal[7];
    const char *real;

    if (scaled < 0 || scaled > 3200)
        return bench_supply_copy_(buffer, BENCH_SUPPLY_WORK_SET_AMPS_TEXT_BYTES, fault, 1);
    real = bench_supply_decimal_(decimal, sizeof decimal, (bench_supply_scaled_)(scaled < 0 ? -scaled : scaled),
                                 scaled < 0 ? '-' : '\0', 3, 0);
    return snprintf(buffer, BENCH_SUPPLY_WORK_SET_AMPS_TEXT_BYTES, "%s", real);
}

int bench_supply_work_watts_text(char *buffer, double value)
{
    static BENCH_SUPPLY_CONST char fault[] = BENCH_SUPPLY_WORK_WATTS_FAULT;
    bench_supply_scaled_ number;
    char decimal[7];
    const char *real;

    if (!(value >= BENCH_SUPPLY_WORK_WATTS_LEAST && value <= BENCH_SUPPLY_WORK_WATTS_GREATEST))
        return bench_supply_copy_(buffer, BENCH_SUPPLY_WORK_WATTS_TEXT_BYTES, fault, 1);
    if (value <= 0)
        value = 0; /* -0.0 */
    number = bench_supply_round_(value, 10u);
#if DBL_MANT_DIG == 24
    if (number > (bench_supply_negative_(value) ? 0u : 1024u))
        return bench_supply_copy_(buffer, BENCH_SUPPLY_WORK_WATTS_TEXT_BYTES, fault, 1);
#endif
    real = bench_supply_decimal_(decimal, sizeof decimal, number, bench_supply_negative_(value) ? '-' : '\0', 1, 0);
    return snprintf(buffer, BENCH_SUPPLY_WORK_WATTS_TEXT_BYTES, "%s", real);
}

int bench_supply_work_watts_text_scaled(char *buffer, int32_t scaled)
{
    static BENCH_SUPPLY_CONST char fault[] = BENCH_SUPPLY_WORK_WATTS_FAULT;
    char decimal[7];
    const char *real;

    if (scaled < 0 || scaled > 1024)
        return bench_supply_copy_(buffer, BENCH_SUPPLY_WORK_WATTS_TEXT_BYTES, fault, 1);
    real = bench_supply_decimal_(decimal, sizeof decimal, (bench_supply_scaled_)(scaled < 0 ? -scaled : scaled),
                                 scaled < 0 ? '-' : '\0', 1, 0);
    return snprintf(buffer, BENCH_SUPPLY_WORK_WATTS_TEXT_BYTES, "%s", real);
}

int bench_supply_work_sink_text(char *buffer, int value)
{
    static BENCH_SUPPLY_CONST char fault[] = BENCH_SUPPLY_WORK_SINK_FAULT;

    if (value < BENCH_SUPPLY_WORK_SINK_LEAST || value > BENCH_SUPPLY_WORK_SINK_GREATEST)
        return bench_supply_copy_(buffer, BENCH_SUPPLY_WORK_SINK_TEXT_BYTES, fault, 1);
    return snprintf(buffer, BENCH_SUPPLY_WORK_SINK_TEXT_BYTES, BENCH_SUPPLY_WORK_SINK_FORMAT, value);
}

int bench_supply_fault_reason_text(char *buffer, int choice)
{
    static BENCH_SUPPLY_CONST char texts[] = "Too much current\000Too hot\000Voltage from outside\000Mains too low\000Fan stands still";

    if (choice < 0 || choice >= 5)
        return -1;
    return bench_supply_copy_(buffer, BENCH_SUPPLY_FAULT_REASON_TEXT_BYTES, bench_supply_choice_(texts, choice), 1);
}

int bench_supply_fault_at_volts_text(char *buffer, double value)
{
    static BENCH_SUPPLY_CONST char fault[] = BENCH_SUPPLY_FAULT_AT_VOLTS_FAULT;
    bench_supply_scaled_ number;
    char decimal[7];
    const char *real;

    if (!(value >= BENCH_SUPPLY_FAULT_AT_VOLTS_LEAST && value <= BENCH_SUPPLY_FAULT_AT_VOLTS_GREATEST))
        return bench_supply_copy_(buffer, BENCH_SUPPLY_FAULT_AT_VOLTS_TEXT_BYTES, fault, 1);
    if (value <= 0)
        value = 0; /* -0.0 */
    number = bench_supply_round_(value, 100u);
#if DBL_MANT_DIG == 24
    if (number > (bench_supply_negative_(value) ? 0u : 4000u))
        return bench_supply_copy_(buffer, BENCH_SUPPLY_FAULT_AT_VOLTS_TEXT_BYTES, fault, 1);
#endif
    real = bench_supply_decimal_(decimal, sizeof decimal, number, bench_supply_negative_(value) ? '-' : '\0', 2, 0);
    return snprintf(buffer, BENCH_SUPPLY_FAULT_AT_VOLTS_TEXT_BYTES, "%s V", real);
}

int bench_supply_fault_at_volts_text_scaled(char *buffer, int32_t scaled)
{
    static BENCH_SUPPLY_CONST char fault[] = BENCH_SUPPLY_FAULT_AT_VOLTS_FAULT;
    char decimal[7];
    const char *real;

    if (scaled < 0 || scaled > 4000)
        return bench_supply_copy_(buffer, BENCH_SUPPLY_FAULT_AT_VOLTS_TEXT_BYTES, fault, 1);
    real = bench_supply_decimal_(decimal, sizeof decimal, (bench_supply_scaled_)(scaled < 0 ? -scaled : scaled),
                                 scaled < 0 ? '-' : '\0', 2, 0);
    return snprintf(buffer, BENCH_SUPPLY_FAULT_AT_VOLTS_TEXT_BYTES, "%s V", real);
}
#endif /* BENCH_SUPPLY_NO_TEXT_FUNCTIONS */

#endif /* BENCH_SUPPLY_IMPLEMENTATION */

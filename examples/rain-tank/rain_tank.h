/* rain-tank: what the panel shows, 128 x 64 pixels, proved by Panelproof for every value it can ever show.

   How to use it

     1. Include this header wherever its constants or functions are needed.
     2. In one source file, before that line:  #define RAIN_TANK_IMPLEMENTATION
     3. Make a port of the type rain_tank_port: two functions of yours that write pixels, and a pointer for them.
     4. Fill in values of the type rain_tank_start_values and call rain_tank_start_draw(&port, &values) to draw a
        screen.
     5. Get the text of a field from rain_tank_start_message_text(buffer, ...), draw the screen again and send the
        frame.

   Define RAIN_TANK_NO_TEXT_FUNCTIONS to leave out the functions that print texts, and <stdio.h> with them.
   Where constants live apart from memory, define RAIN_TANK_CONST, RAIN_TANK_READ8, RAIN_TANK_READ16 and RAIN_TANK_READ32 before the
   implementation.

   layout     rain-tank
   digest     sha256 c341fd95c287149bde9c19cccf1362d14ee6254656231f6997671baf130251b8
   format     1
   made by    Panelproof 0.1.0
   type       reading: pellucet-bold-32.bdf, 32 px, one-bit, native bitmaps
   type       title: pellucet-bold-16.bdf, 16 px, one-bit, native bitmaps
   type       small: pellucet-12.bdf, 12 px, one-bit, native bitmaps
   type       text: pellucet-10.bdf, 10 px, one-bit, native bitmaps

   Made by Panelproof; change the layout, not this file. Not a safety device: a proof of pixels, not of measurements.
   Local codes and licensed practice come first. */

#ifndef RAIN_TANK_HEADER_
#define RAIN_TANK_HEADER_

#include <stddef.h>
#include <stdint.h>

/* SHA-256 of the layout's file */
#define RAIN_TANK_LAYOUT_DIGEST "c341fd95c287149bde9c19cccf1362d14ee6254656231f6997671baf130251b8"

/* The panel */
#define RAIN_TANK_PANEL_WIDTH  128 /* px */
#define RAIN_TANK_PANEL_HEIGHT 64  /* px */

/* How a text lies at its x */
#define RAIN_TANK_STARTS_AT_X  0
#define RAIN_TANK_CENTRED_ON_X 1
#define RAIN_TANK_ENDS_AT_X    2

/* Inks, as the panel's colours (1: lit, 0: dark) */
#define RAIN_TANK_INK_DARK 0 /* #000000 */
#define RAIN_TANK_INK_LIT  1 /* #ffffff */

/* No value for a level bar: it lies outside every range */
#define RAIN_TANK_NO_VALUE INT32_MIN

/* Types: the height of a line */
#define RAIN_TANK_TYPE_READING_ASCENT  26 /* px over the baseline */
#define RAIN_TANK_TYPE_READING_DESCENT 6  /* px under the baseline */
#define RAIN_TANK_TYPE_TITLE_ASCENT    13 /* px over the baseline */
#define RAIN_TANK_TYPE_TITLE_DESCENT   3  /* px under the baseline */
#define RAIN_TANK_TYPE_SMALL_ASCENT    10 /* px over the baseline */
#define RAIN_TANK_TYPE_SMALL_DESCENT   2  /* px under the baseline */
#define RAIN_TANK_TYPE_TEXT_ASCENT     8  /* px over the baseline */
#define RAIN_TANK_TYPE_TEXT_DESCENT    2  /* px under the baseline */

/* ---- Screen `start` --------------------------------------------------------------------------------------------- */

#define RAIN_TANK_START_GROUND RAIN_TANK_INK_DARK

/* label `title` */
#define RAIN_TANK_START_TITLE_X         64                     /* px */
#define RAIN_TANK_START_TITLE_BASELINE  22                     /* px */
#define RAIN_TANK_START_TITLE_ALIGNMENT RAIN_TANK_CENTRED_ON_X
#define RAIN_TANK_START_TITLE_INK       RAIN_TANK_INK_LIT
#define RAIN_TANK_START_TITLE_GROUND    RAIN_TANK_INK_DARK
#define RAIN_TANK_START_TITLE_TEXT      "Rain tank"

/* rule `line` */
#define RAIN_TANK_START_LINE_X         24                /* px */
#define RAIN_TANK_START_LINE_Y         28                /* px */
#define RAIN_TANK_START_LINE_LENGTH    80                /* px across */
#define RAIN_TANK_START_LINE_THICKNESS 1                 /* px */
#define RAIN_TANK_START_LINE_INK       RAIN_TANK_INK_LIT

/* field `message`, clearing: pad */
#define RAIN_TANK_START_MESSAGE_X                               64                     /* px */
#define RAIN_TANK_START_MESSAGE_BASELINE                        42                     /* px */
#define RAIN_TANK_START_MESSAGE_ALIGNMENT                       RAIN_TANK_CENTRED_ON_X
#define RAIN_TANK_START_MESSAGE_INK                             RAIN_TANK_INK_LIT
#define RAIN_TANK_START_MESSAGE_GROUND                          RAIN_TANK_INK_DARK
#define RAIN_TANK_START_MESSAGE_PADDING_X                       0                      /* px */
#define RAIN_TANK_START_MESSAGE_PADDING_Y                       34                     /* px */
#define RAIN_TANK_START_MESSAGE_PADDING_WIDTH                   128                    /* px */
#define RAIN_TANK_START_MESSAGE_PADDING_HEIGHT                  10                     /* px */
#define RAIN_TANK_START_MESSAGE_TEXT_BYTES                      25                     /* the text's buffer, terminator included */
#define RAIN_TANK_START_MESSAGE_FORMAT                          "%s"
#define RAIN_TANK_START_MESSAGE_CHOICE_WAKING_THE_FLOAT         0                      /* "Waking the float" */
#define RAIN_TANK_START_MESSAGE_CHOICE_JOINING_THE_GARDEN_RADIO 1                      /* "Joining the garden radio" */
#define RAIN_TANK_START_MESSAGE_CHOICE_SETTING_THE_CLOCK        2                      /* "Setting the clock" */
#define RAIN_TANK_START_MESSAGE_CHOICE_READY                    3                      /* "Ready" */

/* label `caution` */
#define RAIN_TANK_START_CAUTION_X         64                     /* px */
#define RAIN_TANK_START_CAUTION_BASELINE  61                     /* px */
#define RAIN_TANK_START_CAUTION_ALIGNMENT RAIN_TANK_CENTRED_ON_X
#define RAIN_TANK_START_CAUTION_INK       RAIN_TANK_INK_LIT
#define RAIN_TANK_START_CAUTION_GROUND    RAIN_TANK_INK_DARK
#define RAIN_TANK_START_CAUTION_TEXT      "Not a safety device"

/* ---- Screen `tank` ---------------------------------------------------------------------------------------------- */

#define RAIN_TANK_TANK_GROUND RAIN_TANK_INK_DARK

/* label `title` */
#define RAIN_TANK_TANK_TITLE_X         1                     /* px */
#define RAIN_TANK_TANK_TITLE_BASELINE  10                    /* px */
#define RAIN_TANK_TANK_TITLE_ALIGNMENT RAIN_TANK_STARTS_AT_X
#define RAIN_TANK_TANK_TITLE_INK       RAIN_TANK_INK_LIT
#define RAIN_TANK_TANK_TITLE_GROUND    RAIN_TANK_INK_DARK
#define RAIN_TANK_TANK_TITLE_TEXT      "Rain tank"

/* icon `radio`, clearing: pad */
#define RAIN_TANK_TANK_RADIO_X              101                    /* px */
#define RAIN_TANK_TANK_RADIO_Y              0                      /* px */
#define RAIN_TANK_TANK_RADIO_INK            RAIN_TANK_INK_LIT
#define RAIN_TANK_TANK_RADIO_GROUND         RAIN_TANK_INK_DARK
#define RAIN_TANK_TANK_RADIO_PADDING_X      RAIN_TANK_TANK_RADIO_X /* px */
#define RAIN_TANK_TANK_RADIO_PADDING_Y      RAIN_TANK_TANK_RADIO_Y /* px */
#define RAIN_TANK_TANK_RADIO_PADDING_WIDTH  12                     /* px */
#define RAIN_TANK_TANK_RADIO_PADDING_HEIGHT 12                     /* px */
#define RAIN_TANK_TANK_RADIO_STATE_OFF      0
#define RAIN_TANK_TANK_RADIO_STATE_TRYING_1 1
#define RAIN_TANK_TANK_RADIO_STATE_TRYING_2 2
#define RAIN_TANK_TANK_RADIO_STATE_UP       3
#define RAIN_TANK_TANK_RADIO_STATE_FAULT    4
#define RAIN_TANK_TANK_RADIO_STATES         5

/* icon `clock`, clearing: pad */
#define RAIN_TANK_TANK_CLOCK_X              115                    /* px */
#define RAIN_TANK_TANK_CLOCK_Y              0                      /* px */
#define RAIN_TANK_TANK_CLOCK_INK            RAIN_TANK_INK_LIT
#define RAIN_TANK_TANK_CLOCK_GROUND         RAIN_TANK_INK_DARK
#define RAIN_TANK_TANK_CLOCK_PADDING_X      RAIN_TANK_TANK_CLOCK_X /* px */
#define RAIN_TANK_TANK_CLOCK_PADDING_Y      RAIN_TANK_TANK_CLOCK_Y /* px */
#define RAIN_TANK_TANK_CLOCK_PADDING_WIDTH  12                     /* px */
#define RAIN_TANK_TANK_CLOCK_PADDING_HEIGHT 12                     /* px */
#define RAIN_TANK_TANK_CLOCK_STATE_OFF      0
#define RAIN_TANK_TANK_CLOCK_STATE_TRYING_1 1
#define RAIN_TANK_TANK_CLOCK_STATE_TRYING_2 2
#define RAIN_TANK_TANK_CLOCK_STATE_TRYING_3 3
#define RAIN_TANK_TANK_CLOCK_STATE_UP       4
#define RAIN_TANK_TANK_CLOCK_STATE_FAULT    5
#define RAIN_TANK_TANK_CLOCK_STATES         6

/* rule `line` */
#define RAIN_TANK_TANK_LINE_X         0                 /* px */
#define RAIN_TANK_TANK_LINE_Y         14                /* px */
#define RAIN_TANK_TANK_LINE_LENGTH    128               /* px across */
#define RAIN_TANK_TANK_LINE_THICKNESS 1                 /* px */
#define RAIN_TANK_TANK_LINE_INK       RAIN_TANK_INK_LIT

/* field `level`, clearing: pad */
#define RAIN_TANK_TANK_LEVEL_X              66                  /* px */
#define RAIN_TANK_TANK_LEVEL_BASELINE       43                  /* px */
#define RAIN_TANK_TANK_LEVEL_ALIGNMENT      RAIN_TANK_ENDS_AT_X
#define RAIN_TANK_TANK_LEVEL_INK            RAIN_TANK_INK_LIT
#define RAIN_TANK_TANK_LEVEL_GROUND         RAIN_TANK_INK_DARK
#define RAIN_TANK_TANK_LEVEL_PADDING_X      2                   /* px */
#define RAIN_TANK_TANK_LEVEL_PADDING_Y      19                  /* px */
#define RAIN_TANK_TANK_LEVEL_PADDING_WIDTH  64                  /* px */
#define RAIN_TANK_TANK_LEVEL_PADDING_HEIGHT 26                  /* px */
#define RAIN_TANK_TANK_LEVEL_TEXT_BYTES     4                   /* the text's buffer, terminator included */
#define RAIN_TANK_TANK_LEVEL_FORMAT         "%u"
#define RAIN_TANK_TANK_LEVEL_LEAST          0U
#define RAIN_TANK_TANK_LEVEL_GREATEST       100U
#define RAIN_TANK_TANK_LEVEL_FAULT          "--"
#define RAIN_TANK_TANK_LEVEL_FIRST          "--"

/* label `percent` */
#define RAIN_TANK_TANK_PERCENT_X         70                    /* px */
#define RAIN_TANK_TANK_PERCENT_BASELINE  43                    /* px */
#define RAIN_TANK_TANK_PERCENT_ALIGNMENT RAIN_TANK_STARTS_AT_X
#define RAIN_TANK_TANK_PERCENT_INK       RAIN_TANK_INK_LIT
#define RAIN_TANK_TANK_PERCENT_GROUND    RAIN_TANK_INK_DARK
#define RAIN_TANK_TANK_PERCENT_TEXT      "%"

/* box `tank` */
#define RAIN_TANK_TANK_TANK_X         104               /* px */
#define RAIN_TANK_TANK_TANK_Y         18                /* px */
#define RAIN_TANK_TANK_TANK_WIDTH     20                /* px */
#define RAIN_TANK_TANK_TANK_HEIGHT    29                /* px */
#define RAIN_TANK_TANK_TANK_THICKNESS 1                 /* px of the outline, inwards */
#define RAIN_TANK_TANK_TANK_OUTLINE   RAIN_TANK_INK_LIT

/* level bar `bar`, growing upwards */
#define RAIN_TANK_TANK_BAR_X        106                /* px */
#define RAIN_TANK_TANK_BAR_Y        20                 /* px */
#define RAIN_TANK_TANK_BAR_WIDTH    16                 /* px */
#define RAIN_TANK_TANK_BAR_HEIGHT   25                 /* px */
#define RAIN_TANK_TANK_BAR_LEAST    0                  /* the value of an empty bar */
#define RAIN_TANK_TANK_BAR_GREATEST 100                /* the value of a full one */
#define RAIN_TANK_TANK_BAR_INK      RAIN_TANK_INK_LIT
#define RAIN_TANK_TANK_BAR_GROUND   RAIN_TANK_INK_DARK
#define RAIN_TANK_TANK_BAR_LIMIT_1  15                 /* marked by a line */
#define RAIN_TANK_TANK_BAR_LIMIT_2  90                 /* marked by a line */

/* field `volume`, clearing: pad */
#define RAIN_TANK_TANK_VOLUME_X              33                  /* px */
#define RAIN_TANK_TANK_VOLUME_BASELINE       61                  /* px */
#define RAIN_TANK_TANK_VOLUME_ALIGNMENT      RAIN_TANK_ENDS_AT_X
#define RAIN_TANK_TANK_VOLUME_INK            RAIN_TANK_INK_LIT
#define RAIN_TANK_TANK_VOLUME_GROUND         RAIN_TANK_INK_DARK
#define RAIN_TANK_TANK_VOLUME_PADDING_X      1                   /* px */
#define RAIN_TANK_TANK_VOLUME_PADDING_Y      52                  /* px */
#define RAIN_TANK_TANK_VOLUME_PADDING_WIDTH  33                  /* px */
#define RAIN_TANK_TANK_VOLUME_PADDING_HEIGHT 11                  /* px */
#define RAIN_TANK_TANK_VOLUME_TEXT_BYTES     5                   /* the text's buffer, terminator included */
#define RAIN_TANK_TANK_VOLUME_FORMAT         "%u"
#define RAIN_TANK_TANK_VOLUME_LEAST          0U
#define RAIN_TANK_TANK_VOLUME_GREATEST       3000U
#define RAIN_TANK_TANK_VOLUME_FAULT          "----"
#define RAIN_TANK_TANK_VOLUME_FIRST          "----"

/* label `litre` */
#define RAIN_TANK_TANK_LITRE_X         37                    /* px */
#define RAIN_TANK_TANK_LITRE_BASELINE  61                    /* px */
#define RAIN_TANK_TANK_LITRE_ALIGNMENT RAIN_TANK_STARTS_AT_X
#define RAIN_TANK_TANK_LITRE_INK       RAIN_TANK_INK_LIT
#define RAIN_TANK_TANK_LITRE_GROUND    RAIN_TANK_INK_DARK
#define RAIN_TANK_TANK_LITRE_TEXT      "L"

/* field `flow`, clearing: pad */
#define RAIN_TANK_TANK_FLOW_X              91                  /* px */
#define RAIN_TANK_TANK_FLOW_BASELINE       61                  /* px */
#define RAIN_TANK_TANK_FLOW_ALIGNMENT      RAIN_TANK_ENDS_AT_X
#define RAIN_TANK_TANK_FLOW_INK            RAIN_TANK_INK_LIT
#define RAIN_TANK_TANK_FLOW_GROUND         RAIN_TANK_INK_DARK
#define RAIN_TANK_TANK_FLOW_PADDING_X      46                  /* px */
#define RAIN_TANK_TANK_FLOW_PADDING_Y      52                  /* px */
#define RAIN_TANK_TANK_FLOW_PADDING_WIDTH  46                  /* px */
#define RAIN_TANK_TANK_FLOW_PADDING_HEIGHT 11                  /* px */
#define RAIN_TANK_TANK_FLOW_TEXT_BYTES     6                   /* the text's buffer, terminator included */
#define RAIN_TANK_TANK_FLOW_FORMAT         "%+.1f"
#define RAIN_TANK_TANK_FLOW_LEAST          (-99.9)
#define RAIN_TANK_TANK_FLOW_GREATEST       99.9
#define RAIN_TANK_TANK_FLOW_FAULT          "--.-"
#define RAIN_TANK_TANK_FLOW_FIRST          "--.-"

/* label `rate` */
#define RAIN_TANK_TANK_RATE_X         95                    /* px */
#define RAIN_TANK_TANK_RATE_BASELINE  61                    /* px */
#define RAIN_TANK_TANK_RATE_ALIGNMENT RAIN_TANK_STARTS_AT_X
#define RAIN_TANK_TANK_RATE_INK       RAIN_TANK_INK_LIT
#define RAIN_TANK_TANK_RATE_GROUND    RAIN_TANK_INK_DARK
#define RAIN_TANK_TANK_RATE_TEXT      "L/min"

/* ---- Screen `alarm` --------------------------------------------------------------------------------------------- */

#define RAIN_TANK_ALARM_GROUND RAIN_TANK_INK_DARK

/* box `banner` */
#define RAIN_TANK_ALARM_BANNER_X      0                 /* px */
#define RAIN_TANK_ALARM_BANNER_Y      0                 /* px */
#define RAIN_TANK_ALARM_BANNER_WIDTH  128               /* px */
#define RAIN_TANK_ALARM_BANNER_HEIGHT 24                /* px */
#define RAIN_TANK_ALARM_BANNER_FILL   RAIN_TANK_INK_LIT

/* field `what`, clearing: pad */
#define RAIN_TANK_ALARM_WHAT_X                     64                     /* px */
#define RAIN_TANK_ALARM_WHAT_BASELINE              17                     /* px */
#define RAIN_TANK_ALARM_WHAT_ALIGNMENT             RAIN_TANK_CENTRED_ON_X
#define RAIN_TANK_ALARM_WHAT_INK                   RAIN_TANK_INK_DARK
#define RAIN_TANK_ALARM_WHAT_GROUND                RAIN_TANK_INK_LIT
#define RAIN_TANK_ALARM_WHAT_PADDING_X             2                      /* px */
#define RAIN_TANK_ALARM_WHAT_PADDING_Y             2                      /* px */
#define RAIN_TANK_ALARM_WHAT_PADDING_WIDTH         124                    /* px */
#define RAIN_TANK_ALARM_WHAT_PADDING_HEIGHT        20                     /* px */
#define RAIN_TANK_ALARM_WHAT_TEXT_BYTES            15                     /* the text's buffer, terminator included */
#define RAIN_TANK_ALARM_WHAT_FORMAT                "%s"
#define RAIN_TANK_ALARM_WHAT_CHOICE_TANK_OVERFLOWS 0                      /* "Tank overflows" */
#define RAIN_TANK_ALARM_WHAT_CHOICE_TANK_EMPTY     1                      /* "Tank empty" */
#define RAIN_TANK_ALARM_WHAT_CHOICE_FLOAT_IS_LOST  2                      /* "Float is lost" */
#define RAIN_TANK_ALARM_WHAT_CHOICE_PUMP_RUNS_DRY  3                      /* "Pump runs dry" */

/* label `since-word` */
#define RAIN_TANK_ALARM_SINCE_WORD_X         8                     /* px */
#define RAIN_TANK_ALARM_SINCE_WORD_BASELINE  42                    /* px */
#define RAIN_TANK_ALARM_SINCE_WORD_ALIGNMENT RAIN_TANK_STARTS_AT_X
#define RAIN_TANK_ALARM_SINCE_WORD_INK       RAIN_TANK_INK_LIT
#define RAIN_TANK_ALARM_SINCE_WORD_GROUND    RAIN_TANK_INK_DARK
#define RAIN_TANK_ALARM_SINCE_WORD_TEXT      "Since"

/* field `since`, clearing: pad */
#define RAIN_TANK_ALARM_SINCE_X              52                    /* px */
#define RAIN_TANK_ALARM_SINCE_BASELINE       42                    /* px */
#define RAIN_TANK_ALARM_SINCE_ALIGNMENT      RAIN_TANK_STARTS_AT_X
#define RAIN_TANK_ALARM_SINCE_INK            RAIN_TANK_INK_LIT
#define RAIN_TANK_ALARM_SINCE_GROUND         RAIN_TANK_INK_DARK
#define RAIN_TANK_ALARM_SINCE_PADDING_X      52                    /* px */
#define RAIN_TANK_ALARM_SINCE_PADDING_Y      32                    /* px */
#define RAIN_TANK_ALARM_SINCE_PADDING_WIDTH  40                    /* px */
#define RAIN_TANK_ALARM_SINCE_PADDING_HEIGHT 12                    /* px */
#define RAIN_TANK_ALARM_SINCE_TEXT_BYTES     6                     /* the text's buffer, terminator included */
#define RAIN_TANK_ALARM_SINCE_FORMAT         "%02u:%02u"
#define RAIN_TANK_ALARM_SINCE_LEAST_1        0U
#define RAIN_TANK_ALARM_SINCE_GREATEST_1     23U
#define RAIN_TANK_ALARM_SINCE_LEAST_2        0U
#define RAIN_TANK_ALARM_SINCE_GREATEST_2     59U
#define RAIN_TANK_ALARM_SINCE_FAULT          "--:--"
#define RAIN_TANK_ALARM_SINCE_FIRST          "--:--"

/* label `advice` */
#define RAIN_TANK_ALARM_ADVICE_X         64                      /* px */
#define RAIN_TANK_ALARM_ADVICE_BASELINE  60                      /* px */
#define RAIN_TANK_ALARM_ADVICE_ALIGNMENT RAIN_TANK_CENTRED_ON_X
#define RAIN_TANK_ALARM_ADVICE_INK       RAIN_TANK_INK_LIT
#define RAIN_TANK_ALARM_ADVICE_GROUND    RAIN_TANK_INK_DARK
#define RAIN_TANK_ALARM_ADVICE_TEXT      "See to it at the tank"

/* ---- Functions --------------------------------------------------------------------------------------------- */

/* How pixels reach the glass. `window` sets a rectangle; the runs after it fill it exactly, row by row from its top
   left corner, each run being `count` pixels of one colour, which may go on into the next row. */
typedef struct rain_tank_port {
    void (*window)(void *context, uint16_t x, uint16_t y, uint16_t width, uint16_t height);
    void (*run)(void *context, uint16_t colour, uint32_t count);
    void *context;
} rain_tank_port;

/* What the screen `start` shows: UTF-8 texts (NULL is an empty one). */
typedef struct rain_tank_start_values {
    const char *message;
} rain_tank_start_values;

/* What the screen `tank` shows: UTF-8 texts (NULL is an empty one), icons' states, and values of level bars. */
typedef struct rain_tank_tank_values {
    uint8_t radio;      /* one of RAIN_TANK_TANK_RADIO_STATE_... */
    uint8_t clock;      /* one of RAIN_TANK_TANK_CLOCK_STATE_... */
    const char *level;
    int32_t bar;        /* RAIN_TANK_NO_VALUE where there is none */
    const char *volume;
    const char *flow;
} rain_tank_tank_values;

/* What the screen `alarm` shows: UTF-8 texts (NULL is an empty one). */
typedef struct rain_tank_alarm_values {
    const char *what;
    const char *since;
} rain_tank_alarm_values;

#ifdef __cplusplus
extern "C" {
#endif

/* The frame of this panel is composed in memory and sent at once, so there are only functions that draw a whole screen:
   draw into the frame, then send it. */
void rain_tank_start_draw(const rain_tank_port *port, const rain_tank_start_values *values);
void rain_tank_tank_draw(const rain_tank_port *port, const rain_tank_tank_values *values);
void rain_tank_alarm_draw(const rain_tank_port *port, const rain_tank_alarm_values *values);

#ifndef RAIN_TANK_NO_TEXT_FUNCTIONS
/* Write the text of a field into a buffer of its ..._TEXT_BYTES and return its bytes, terminator not counted. A value
   outside what the proof covers, or not a number, gives the text named behind `else`. Where a field has none the
   result is -1 and the buffer is as it was: do not update the field then.
   Those called ..._scaled take a real as a whole number of its last places: 1234 for 123.4. Where a double has
   32 bits only, the others show the nearest number that it can hold. */

/* choice: 0 to 3, one of RAIN_TANK_START_MESSAGE_CHOICE_...; else -1, the buffer untouched */
int rain_tank_start_message_text(char *buffer, int choice);

/* value: 0 to 100; else RAIN_TANK_TANK_LEVEL_FAULT */
int rain_tank_tank_level_text(char *buffer, unsigned int value);

/* value: 0 to 3000; else RAIN_TANK_TANK_VOLUME_FAULT */
int rain_tank_tank_volume_text(char *buffer, unsigned int value);

/* value: -99.9 to 99.9; else RAIN_TANK_TANK_FLOW_FAULT */
int rain_tank_tank_flow_text(char *buffer, double value);

/* scaled: -999 to 999, in steps of 0.1; else RAIN_TANK_TANK_FLOW_FAULT */
int rain_tank_tank_flow_text_scaled(char *buffer, int32_t scaled);

/* choice: 0 to 3, one of RAIN_TANK_ALARM_WHAT_CHOICE_...; else -1, the buffer untouched */
int rain_tank_alarm_what_text(char *buffer, int choice);

/* value_1: 0 to 23; value_2: 0 to 59; else RAIN_TANK_ALARM_SINCE_FAULT */
int rain_tank_alarm_since_text(char *buffer, unsigned int value_1, unsigned int value_2);
#endif

#ifdef __cplusplus
}
#endif

#endif /* RAIN_TANK_HEADER_ */

#if defined(RAIN_TANK_IMPLEMENTATION) && !defined(RAIN_TANK_IMPLEMENTED_)
#define RAIN_TANK_IMPLEMENTED_

/* A place brought between two others; onto the panel. */
#define RAIN_TANK_WITHIN_(at, least, greatest) ((at) < (least) ? (least) : (at) > (greatest) ? (greatest) : (at))
#define RAIN_TANK_ACROSS_(at)                  (uint8_t)RAIN_TANK_WITHIN_(at, 0, RAIN_TANK_PANEL_WIDTH)
#define RAIN_TANK_DOWN_(at)                    (uint8_t)RAIN_TANK_WITHIN_(at, 0, RAIN_TANK_PANEL_HEIGHT)

/* ---- Data -------------------------------------------------------------------------------------------------- */

#ifdef RAIN_TANK_CONST
#define RAIN_TANK_APART_ 1
#else
#define RAIN_TANK_APART_          0
#define RAIN_TANK_CONST           const
#define RAIN_TANK_READ8(address)  (*(const uint8_t *)(address))
#define RAIN_TANK_READ16(address) (*(const uint16_t *)(address))
#define RAIN_TANK_READ32(address) (*(const uint32_t *)(address))
#endif

/* Bitmaps, row after row with nothing between, the first pixel in the lowest bits; 830 bytes. */
static RAIN_TANK_CONST uint8_t rain_tank_bits_[] = {
    /* reading U+002D -: 13 x 4 */
    0x0E, 0xFF, 0x1F,
    /* reading U+0030 0: 18 x 22 */
    0x08, 0x3E, 0x08, 0xE0, 0x1F, 0xE0, 0xFF, 0xC1, 0xFF, 0x8F, 0x1F, 0x7E, 0x3E, 0xF0, 0xFD, 0xC0,
    0xFF, 0x01, 0xFE, 0xC7, 0xF8, 0x1F, 0xE0, 0xFF, 0xC0, 0xEF, 0x03, 0x9F, 0x1F, 0x7E, 0xFC, 0xFF,
    0xE0, 0xFF, 0x01, 0xFE, 0x01,
    /* reading U+0031 1: 13 x 22 */
    0xD6, 0xFE, 0x3B, 0xFC, 0xC1, 0x3F, 0xFC, 0x07, 0xF8, 0xF0, 0xFF, 0x01,
    /* reading U+0032 2: 18 x 22 */
    0x88, 0x00, 0x38, 0xE0, 0x1F, 0xF0, 0xFF, 0xE3, 0xFF, 0xDF, 0x0F, 0xFC, 0x1F, 0xE0, 0x03, 0x80,
    0x0F, 0x00, 0x3F, 0x00, 0x7E, 0x00, 0xFE, 0x00, 0xFC, 0x01, 0xFC, 0x03, 0xF8, 0x07, 0xF8, 0x07,
    0xF0, 0x07, 0xC0, 0x0F, 0x80, 0x1F, 0x00, 0xFF, 0xFF, 0x03,
    /* reading U+0033 3: 18 x 22 */
    0x80, 0x94, 0x08, 0xE0, 0x1F, 0xC0, 0xFF, 0x80, 0xFF, 0x07, 0xFF, 0x3F, 0xFC, 0xFC, 0xF0, 0xE1,
    0x03, 0x80, 0x0F, 0x00, 0x3F, 0xC0, 0xFF, 0x00, 0xFF, 0x07, 0x00, 0x3F, 0x00, 0xF8, 0x1F, 0xE0,
    0xFF, 0xC0, 0xEF, 0xFF, 0x1F, 0xFF, 0x3F, 0xF0, 0x3F, 0x00,
    /* reading U+0034 4: 18 x 22 */
    0x52, 0xC9, 0x3D, 0x00, 0x7E, 0x00, 0xFC, 0x01, 0xF8, 0x07, 0xF0, 0x1F, 0xE0, 0x7F, 0xC0, 0xFF,
    0x81, 0xDF, 0x07, 0x3F, 0x1F, 0xFF, 0xFF, 0x03, 0xF0, 0x01,
    /* reading U+0035 5: 18 x 22 */
    0xEE, 0xC8, 0x08, 0xFF, 0x7F, 0x7C, 0x00, 0xF0, 0xFF, 0xC1, 0xFF, 0x3F, 0xFF, 0xFF, 0x01, 0xC0,
    0x0F, 0x00, 0xFE, 0x07, 0xF8, 0x3F, 0xF0, 0xFB, 0xFF, 0xC7, 0xFF, 0x0F, 0xF8, 0x07,
    /* reading U+0036 6: 18 x 22 */
    0x08, 0x48, 0x09, 0xE0, 0x1F, 0xE0, 0xFF, 0xC1, 0xFF, 0x8F, 0x1F, 0x7E, 0x3E, 0xF0, 0xFD, 0x00,
    0xF0, 0x01, 0xC0, 0xFF, 0x07, 0xFF, 0xFF, 0xFC, 0xFF, 0xF7, 0x03, 0xFF, 0x07, 0xF8, 0x3F, 0xE0,
    0xFF, 0xC1, 0xEF, 0xFF, 0x1F, 0xFF, 0x3F, 0xE0, 0x1F, 0x00,
    /* reading U+0037 7: 18 x 22 */
    0xAE, 0x56, 0x2B, 0xFF, 0xFF, 0x03, 0xC0, 0x0F, 0x80, 0x1F, 0x00, 0x3F, 0x00, 0x7E, 0x00, 0xFC,
    0x00, 0xF8, 0x01, 0xF0, 0x03, 0xE0, 0x07, 0x00,
    /* reading U+0038 8: 18 x 22 */
    0xC0, 0x94, 0x09, 0xE0, 0x1F, 0xC0, 0xFF, 0x80, 0xFF, 0x07, 0xFF, 0x3F, 0xFC, 0xFC, 0xF0, 0xE1,
    0xC3, 0xCF, 0x0F, 0xFF, 0x3F, 0xFE, 0xFF, 0xFD, 0xC0, 0xFF, 0x01, 0xFE, 0x0F, 0xFC, 0xFE, 0xFF,
    0xF1, 0xFF, 0x03, 0xFF, 0x03,
    /* reading U+0039 9: 18 x 22 */
    0x48, 0x09, 0x08, 0xE0, 0x1F, 0xF0, 0xFF, 0xE3, 0xFF, 0xDF, 0x0F, 0xFE, 0x1F, 0xF0, 0x7F, 0x80,
    0xFF, 0x03, 0xBF, 0xFF, 0xFF, 0xFC, 0xFF, 0x83, 0xFF, 0x0F, 0x00, 0x3E, 0x00, 0xFC, 0x3E, 0xF0,
    0xF9, 0xE1, 0xC7, 0xFF, 0x0F, 0xFE, 0x1F, 0xE0, 0x1F, 0x00,
    /* title U+0046 F: 7 x 10 */
    0xCC, 0x03, 0xFF, 0xC1, 0x6F, 0x00,
    /* title U+0050 P: 8 x 10 */
    0x9C, 0x03, 0x7F, 0xC3, 0x7F, 0x03,
    /* title U+0052 R: 8 x 10 */
    0x1C, 0x01, 0x7F, 0xC3, 0x7F, 0x33, 0x63, 0xC3,
    /* title U+0054 T: 8 x 10 */
    0xFC, 0x03, 0xFF, 0x18,
    /* title U+0061 a: 7 x 7 */
    0x04, 0x3E, 0xB0, 0x7F, 0x3C, 0xF7, 0x03,
    /* title U+0064 d: 7 x 10 */
    0xC6, 0x00, 0x60, 0xFF, 0x7C, 0x3C, 0xF7, 0x03,
    /* title U+0065 e: 7 x 7 */
    0x04, 0xBE, 0xF1, 0x7F, 0x30, 0xF6, 0x01,
    /* title U+0066 f: 4 x 10 */
    0xE4, 0x03, 0x6E, 0x6F,
    /* title U+0069 i: 2 x 10 */
    0xF4, 0x03, 0x33,
    /* title U+006B k: 6 x 10 */
    0x06, 0x00, 0xC3, 0xBC, 0x3D, 0xC7, 0xB3, 0xCD,
    /* title U+006C l: 4 x 10 */
    0xFE, 0x01, 0xE3,
    /* title U+006D m: 10 x 7 */
    0x78, 0xDF, 0xDD, 0x3D, 0x33,
    /* title U+006E n: 7 x 7 */
    0x78, 0xBF, 0xF3, 0x18,
    /* title U+006F o: 7 x 7 */
    0x3C, 0xBE, 0xB1, 0x0F,
    /* title U+0070 p: 7 x 10 */
    0x18, 0x03, 0xBF, 0xF3, 0xF8, 0xFC, 0x1B, 0x00,
    /* title U+0072 r: 5 x 7 */
    0x78, 0xFF, 0x0C,
    /* title U+0073 s: 6 x 7 */
    0x00, 0xDE, 0x3C, 0x78, 0xF0, 0xEC, 0x01,
    /* title U+0074 t: 4 x 9 */
    0xF2, 0x00, 0xF6, 0xE6,
    /* title U+0075 u: 7 x 7 */
    0x1E, 0xE3, 0xB9, 0x1F,
    /* title U+0076 v: 8 x 7 */
    0x2A, 0xC3, 0x66, 0x3C, 0x18,
    /* title U+0077 w: 10 x 7 */
    0x56, 0x33, 0xFB, 0xC7, 0x0C,
    /* title U+0079 y: 8 x 10 */
    0xAA, 0x00, 0xC3, 0x66, 0x3C, 0x18, 0x0C, 0x07,
    /* small U+0025 %: 8 x 8 */
    0x46, 0x29, 0x29, 0x16, 0x68, 0x94, 0x94, 0x62,
    /* small U+002B +: 5 x 5 */
    0x84, 0x7C, 0x42, 0x00,
    /* small U+002D -: 5 x 1 */
    0x1F,
    /* small U+002E .: 2 x 2 */
    0x0F,
    /* small U+002F /: 4 x 8 */
    0x88, 0x44, 0x22, 0x11,
    /* small U+0030 0: 6 x 8 */
    0x5E, 0x18, 0xA7, 0xE5, 0x18, 0x7A,
    /* small U+0031 1: 5 x 8 */
    0xA6, 0x10, 0x42, 0x08, 0xF9,
    /* small U+0032 2: 6 x 8 */
    0x5E, 0x08, 0x42, 0x08, 0x21, 0xFC,
    /* small U+0033 3: 6 x 8 */
    0x5E, 0x08, 0x72, 0x20, 0x18, 0x7A,
    /* small U+0034 4: 6 x 8 */
    0x10, 0x46, 0x49, 0xD1, 0x0F, 0x41,
    /* small U+0035 5: 6 x 8 */
    0x7F, 0x10, 0x7C, 0x20, 0x18, 0x7A,
    /* small U+0036 6: 6 x 8 */
    0x9C, 0x10, 0x74, 0x63, 0x18, 0x7A,
    /* small U+0037 7: 6 x 8 */
    0x3F, 0x08, 0x41, 0x08, 0x42, 0x10,
    /* small U+0038 8: 6 x 8 */
    0x5E, 0x18, 0x7A, 0x61, 0x18, 0x7A,
    /* small U+0039 9: 6 x 8 */
    0x5E, 0x18, 0xC6, 0x2E, 0x08, 0x39,
    /* small U+003A :: 2 x 6 */
    0x0F, 0x0F,
    /* small U+004C L: 5 x 8 */
    0x21, 0x84, 0x10, 0x42, 0xF8,
    /* small U+0052 R: 6 x 8 */
    0x5F, 0x18, 0x86, 0x5F, 0x12, 0x85,
    /* small U+0053 S: 6 x 8 */
    0x5E, 0x18, 0x18, 0x18, 0x18, 0x7A,
    /* small U+0061 a: 5 x 6 */
    0x0E, 0xFA, 0x98, 0x2D,
    /* small U+0063 c: 5 x 6 */
    0x2E, 0x86, 0x10, 0x1D,
    /* small U+0065 e: 5 x 6 */
    0x2E, 0xFE, 0x10, 0x3C,
    /* small U+0069 i: 1 x 8 */
    0xFD,
    /* small U+006B k: 5 x 8 */
    0x21, 0xC4, 0x74, 0x4A, 0x8A,
    /* small U+006D m: 7 x 6 */
    0xB5, 0x65, 0x32, 0x99, 0x4C, 0x02,
    /* small U+006E n: 5 x 6 */
    0x6D, 0xC6, 0x18, 0x23,
    /* small U+0074 t: 3 x 8 */
    0xD2, 0x25, 0xC9,
    /* text U+004A J: 4 x 7 */
    0x1C, 0x8C, 0x69,
    /* text U+004E N: 5 x 7 */
    0x24, 0x71, 0xD6, 0x1C, 0x01,
    /* text U+0052 R: 5 x 7 */
    0x04, 0x2F, 0xBE, 0x92, 0x22,
    /* text U+0053 S: 5 x 7 */
    0x24, 0x3E, 0x38, 0xF8, 0x00,
    /* text U+0057 W: 5 x 7 */
    0x16, 0xB1, 0xEE, 0x08,
    /* text U+0061 a: 4 x 5 */
    0x00, 0x86, 0x9E, 0x0E,
    /* text U+0063 c: 4 x 5 */
    0x0C, 0x1E, 0x0E,
    /* text U+0064 d: 4 x 7 */
    0x32, 0xE8, 0xE9,
    /* text U+0065 e: 4 x 5 */
    0x00, 0x96, 0x1F, 0x0E,
    /* text U+0066 f: 3 x 7 */
    0x70, 0xCE, 0x03,
    /* text U+0067 g: 4 x 7 */
    0x0C, 0x9E, 0x8E, 0x07,
    /* text U+0068 h: 4 x 7 */
    0x72, 0x71, 0x09,
    /* text U+0069 i: 1 x 7 */
    0x78, 0x05,
    /* text U+006B k: 4 x 7 */
    0x02, 0x91, 0x35, 0x95,
    /* text U+006C l: 2 x 7 */
    0x3E, 0x09,
    /* text U+006E n: 4 x 5 */
    0x1C, 0x97,
    /* text U+006F o: 4 x 5 */
    0x0C, 0x96, 0x06,
    /* text U+0072 r: 3 x 5 */
    0x18, 0x5D, 0x00,
    /* text U+0073 s: 4 x 5 */
    0x00, 0x1E, 0x86, 0x07,
    /* text U+0074 t: 3 x 7 */
    0x32, 0xBA, 0x08,
    /* text U+0076 v: 5 x 5 */
    0x0A, 0x51, 0x11,
    /* text U+0079 y: 4 x 7 */
    0x0E, 0xE9, 0x38,
    /* icon tank radio off: 12 x 12 */
    0xF6, 0x01, 0x00, 0x00, 0x06, 0xF0, 0x80, 0x19, 0x08, 0x01,
    /* icon tank radio trying-1: 12 x 12 */
    0x90, 0x01, 0x00, 0x80, 0x10, 0x04, 0x42, 0x26, 0x68, 0x01, 0x06, 0xF0, 0x80, 0x19, 0x08, 0x01,
    /* icon tank radio trying-2: 12 x 12 */
    0x34, 0x01, 0x02, 0x14, 0x80, 0x61, 0x28, 0x46, 0x60, 0x00, 0x0F, 0x98, 0x81, 0x10,
    /* icon tank radio up: 12 x 12 */
    0x10, 0x01, 0x02, 0x94, 0x90, 0x05, 0x5A, 0xA6, 0x69, 0x29, 0x46, 0x60, 0x00, 0x0F, 0x98, 0x81,
    0x10,
    /* icon tank radio fault: 12 x 12 */
    0x10, 0x00, 0x02, 0x90, 0x00, 0x05, 0x50, 0x06, 0x69, 0x20, 0x02, 0xA0, 0x08, 0x52, 0x30, 0x82,
    0x51, 0x88, 0x08,
    /* icon tank clock off: 12 x 12 */
    0xE8, 0x02, 0x00, 0xC0, 0x30, 0x02, 0x04, 0x00, 0x02, 0xC4, 0x30, 0x00, 0x00,
    /* icon tank clock trying-1: 12 x 12 */
    0x60, 0x02, 0xF0, 0xC0, 0x30, 0x02, 0x24, 0x46, 0x61, 0x18, 0x80, 0x02, 0xC4, 0x30, 0xF0, 0x00,
    /* icon tank clock trying-2: 12 x 12 */
    0x48, 0x02, 0xF0, 0xC0, 0x30, 0x02, 0x14, 0x80, 0xE1, 0x19, 0x80, 0x02, 0xC4, 0x30, 0xF0, 0x00,
    /* icon tank clock trying-3: 12 x 12 */
    0xC8, 0x00, 0xF0, 0xC0, 0x30, 0x02, 0x14, 0x80, 0x61, 0x28, 0x46, 0x02, 0xC4, 0x30, 0xF0, 0x00,
    /* icon tank clock up: 12 x 12 */
    0x28, 0x02, 0xF0, 0xC0, 0x3F, 0xDE, 0xF7, 0xFD, 0x1F, 0xFE, 0xFF, 0xFE, 0xC7, 0x3F, 0xF0, 0x00,
    /* icon tank clock fault: 12 x 12 */
    0x28, 0x00, 0xF0, 0xC0, 0x30, 0x22, 0x14, 0x82, 0x21, 0x10, 0x88, 0x02, 0x25, 0x20, 0x0C, 0x05,
    0x8B,
};

/* Of each glyph, the bytes of its character as one number; of an icon's state, its number from 1. */
static RAIN_TANK_CONST uint8_t rain_tank_codes_[] = {
    0x2D, 0x30, 0x31, 0x32, 0x33, 0x34, 0x35, 0x36, 0x37, 0x38, 0x39,
    0x20, 0x46, 0x50, 0x52, 0x54, 0x61, 0x64, 0x65, 0x66, 0x69, 0x6B, 0x6C, 0x6D, 0x6E, 0x6F, 0x70,
    0x72, 0x73, 0x74, 0x75, 0x76, 0x77, 0x79,
    0x20, 0x25, 0x2B, 0x2D, 0x2E, 0x2F, 0x30, 0x31, 0x32, 0x33, 0x34, 0x35, 0x36, 0x37, 0x38, 0x39,
    0x3A, 0x4C, 0x52, 0x53, 0x61, 0x63, 0x65, 0x69, 0x6B, 0x6D, 0x6E, 0x74,
    0x20, 0x4A, 0x4E, 0x52, 0x53, 0x57, 0x61, 0x63, 0x64, 0x65, 0x66, 0x67, 0x68, 0x69, 0x6B, 0x6C,
    0x6E, 0x6F, 0x72, 0x73, 0x74, 0x76, 0x79,
    0x01, 0x02, 0x03, 0x04, 0x05,
    0x01, 0x02, 0x03, 0x04, 0x05, 0x06,
};

/* the label `title` */
static RAIN_TANK_CONST char rain_tank_text_start_title_[] = RAIN_TANK_START_TITLE_TEXT;

/* the label `caution` */
static RAIN_TANK_CONST char rain_tank_text_start_caution_[] = RAIN_TANK_START_CAUTION_TEXT;

/* the label `title` */
static RAIN_TANK_CONST char rain_tank_text_tank_title_[] = RAIN_TANK_TANK_TITLE_TEXT;

/* the label `percent` */
static RAIN_TANK_CONST char rain_tank_text_tank_percent_[] = RAIN_TANK_TANK_PERCENT_TEXT;

/* the label `litre` */
static RAIN_TANK_CONST char rain_tank_text_tank_litre_[] = RAIN_TANK_TANK_LITRE_TEXT;

/* the label `rate` */
static RAIN_TANK_CONST char rain_tank_text_tank_rate_[] = RAIN_TANK_TANK_RATE_TEXT;

/* the label `since-word` */
static RAIN_TANK_CONST char rain_tank_text_alarm_since_word_[] = RAIN_TANK_ALARM_SINCE_WORD_TEXT;

/* the label `advice` */
static RAIN_TANK_CONST char rain_tank_text_alarm_advice_[] = RAIN_TANK_ALARM_ADVICE_TEXT;

/* A glyph, in pixels. */
typedef struct rain_tank_glyph_ {
    uint16_t first_byte;
    uint8_t left;        /* columns between the pen and the first */
    uint8_t drop;        /* rows over the first */
    uint8_t width;
    uint8_t height;
    uint8_t advance;
} rain_tank_glyph_;


static RAIN_TANK_CONST rain_tank_glyph_ rain_tank_glyphs_[] = {
    /* reading: pellucet-bold-32.bdf, 32 px, one-bit, native bitmaps */
    /* columns from 1 px off the pen, rows from 22 px over the baseline; bitmaps as repeats */
    {   0, 3, 12, 13,  4, 21 }, /* U+002D - */
    {   3, 0,  0, 18, 22, 21 }, /* U+0030 0 */
    {  40, 2,  0, 13, 22, 21 }, /* U+0031 1 */
    {  52, 0,  0, 18, 22, 21 }, /* U+0032 2 */
    {  94, 0,  0, 18, 22, 21 }, /* U+0033 3 */
    { 136, 0,  0, 18, 22, 21 }, /* U+0034 4 */
    { 162, 0,  0, 18, 22, 21 }, /* U+0035 5 */
    { 192, 0,  0, 18, 22, 21 }, /* U+0036 6 */
    { 234, 0,  0, 18, 22, 21 }, /* U+0037 7 */
    { 258, 0,  0, 18, 22, 21 }, /* U+0038 8 */
    { 295, 0,  0, 18, 22, 21 }, /* U+0039 9 */
    /* title: pellucet-bold-16.bdf, 16 px, one-bit, native bitmaps */
    /* columns from 0 px off the pen, rows from 10 px over the baseline; bitmaps as repeats */
    {   0, 0,  0,  0,  0,  6 }, /* U+0020 */
    { 337, 1,  0,  7, 10,  9 }, /* U+0046 F */
    { 343, 1,  0,  8, 10, 10 }, /* U+0050 P */
    { 349, 1,  0,  8, 10, 10 }, /* U+0052 R */
    { 357, 0,  0,  8, 10,  9 }, /* U+0054 T */
    { 361, 1,  3,  7,  7,  9 }, /* U+0061 a */
    { 368, 1,  0,  7, 10,  9 }, /* U+0064 d */
    { 376, 1,  3,  7,  7,  9 }, /* U+0065 e */
    { 383, 1,  0,  4, 10,  5 }, /* U+0066 f */
    { 387, 1,  0,  2, 10,  4 }, /* U+0069 i */
    { 390, 1,  0,  6, 10,  8 }, /* U+006B k */
    { 398, 1,  0,  4, 10,  5 }, /* U+006C l */
    { 401, 1,  3, 10,  7, 12 }, /* U+006D m */
    { 406, 1,  3,  7,  7,  9 }, /* U+006E n */
    { 410, 1,  3,  7,  7,  9 }, /* U+006F o */
    { 414, 1,  3,  7, 10,  9 }, /* U+0070 p */
    { 422, 1,  3,  5,  7,  6 }, /* U+0072 r */
    { 425, 1,  3,  6,  7,  8 }, /* U+0073 s */
    { 432, 1,  1,  4,  9,  5 }, /* U+0074 t */
    { 436, 1,  3,  7,  7,  9 }, /* U+0075 u */
    { 440, 1,  3,  8,  7,  9 }, /* U+0076 v */
    { 445, 1,  3, 10,  7, 11 }, /* U+0077 w */
    { 450, 1,  3,  8, 10,  9 }, /* U+0079 y */
    /* small: pellucet-12.bdf, 12 px, one-bit, native bitmaps */
    /* columns from 1 px off the pen, rows from 8 px over the baseline; bitmaps as rows */
    {   0, 0,  0,  0,  0,  4 }, /* U+0020 */
    { 458, 0,  0,  8,  8, 10 }, /* U+0025 % */
    { 466, 0,  2,  5,  5,  8 }, /* U+002B + */
    { 470, 1,  4,  5,  1,  8 }, /* U+002D - */
    { 471, 0,  6,  2,  2,  4 }, /* U+002E . */
    { 472, 0,  0,  4,  8,  6 }, /* U+002F / */
    { 476, 0,  0,  6,  8,  8 }, /* U+0030 0 */
    { 482, 1,  0,  5,  8,  8 }, /* U+0031 1 */
    { 487, 0,  0,  6,  8,  8 }, /* U+0032 2 */
    { 493, 0,  0,  6,  8,  8 }, /* U+0033 3 */
    { 499, 0,  0,  6,  8,  8 }, /* U+0034 4 */
    { 505, 0,  0,  6,  8,  8 }, /* U+0035 5 */
    { 511, 0,  0,  6,  8,  8 }, /* U+0036 6 */
    { 517, 0,  0,  6,  8,  8 }, /* U+0037 7 */
    { 523, 0,  0,  6,  8,  8 }, /* U+0038 8 */
    { 529, 0,  0,  6,  8,  8 }, /* U+0039 9 */
    { 535, 0,  2,  2,  6,  4 }, /* U+003A : */
    { 537, 0,  0,  5,  8,  7 }, /* U+004C L */
    { 542, 0,  0,  6,  8,  8 }, /* U+0052 R */
    { 548, 0,  0,  6,  8,  8 }, /* U+0053 S */
    { 554, 0,  2,  5,  6,  7 }, /* U+0061 a */
    { 558, 0,  2,  5,  6,  7 }, /* U+0063 c */
    { 562, 0,  2,  5,  6,  7 }, /* U+0065 e */
    { 566, 0,  0,  1,  8,  3 }, /* U+0069 i */
    { 567, 0,  0,  5,  8,  7 }, /* U+006B k */
    { 572, 0,  2,  7,  6,  9 }, /* U+006D m */
    { 578, 0,  2,  5,  6,  7 }, /* U+006E n */
    { 582, 0,  0,  3,  8,  4 }, /* U+0074 t */
    /* text: pellucet-10.bdf, 10 px, one-bit, native bitmaps */
    /* columns from 0 px off the pen, rows from 7 px over the baseline; bitmaps as repeats */
    {   0, 0,  0,  0,  0,  3 }, /* U+0020 */
    { 585, 0,  0,  4,  7,  5 }, /* U+004A J */
    { 588, 0,  0,  5,  7,  6 }, /* U+004E N */
    { 593, 0,  0,  5,  7,  6 }, /* U+0052 R */
    { 598, 0,  0,  5,  7,  6 }, /* U+0053 S */
    { 603, 0,  0,  5,  7,  6 }, /* U+0057 W */
    { 607, 0,  2,  4,  5,  5 }, /* U+0061 a */
    { 611, 0,  2,  4,  5,  5 }, /* U+0063 c */
    { 614, 0,  0,  4,  7,  5 }, /* U+0064 d */
    { 617, 0,  2,  4,  5,  5 }, /* U+0065 e */
    { 621, 0,  0,  3,  7,  4 }, /* U+0066 f */
    { 624, 0,  2,  4,  7,  5 }, /* U+0067 g */
    { 628, 0,  0,  4,  7,  5 }, /* U+0068 h */
    { 631, 0,  0,  1,  7,  2 }, /* U+0069 i */
    { 633, 0,  0,  4,  7,  5 }, /* U+006B k */
    { 637, 0,  0,  2,  7,  3 }, /* U+006C l */
    { 639, 0,  2,  4,  5,  5 }, /* U+006E n */
    { 641, 0,  2,  4,  5,  5 }, /* U+006F o */
    { 644, 0,  2,  3,  5,  4 }, /* U+0072 r */
    { 647, 0,  2,  4,  5,  5 }, /* U+0073 s */
    { 651, 0,  0,  3,  7,  4 }, /* U+0074 t */
    { 654, 0,  2,  5,  5,  6 }, /* U+0076 v */
    { 657, 0,  2,  4,  7,  5 }, /* U+0079 y */
    /* the icons */
    /* columns from 0 px off the pen, rows from 0 px over the baseline; bitmaps as repeats */
    { 660, 0,  0, 12, 12, 12 }, /* tank radio off */
    { 670, 0,  0, 12, 12, 12 }, /* tank radio trying-1 */
    { 686, 0,  0, 12, 12, 12 }, /* tank radio trying-2 */
    { 700, 0,  0, 12, 12, 12 }, /* tank radio up */
    { 717, 0,  0, 12, 12, 12 }, /* tank radio fault */
    { 736, 0,  0, 12, 12, 12 }, /* tank clock off */
    { 749, 0,  0, 12, 12, 12 }, /* tank clock trying-1 */
    { 765, 0,  0, 12, 12, 12 }, /* tank clock trying-2 */
    { 781, 0,  0, 12, 12, 12 }, /* tank clock trying-3 */
    { 797, 0,  0, 12, 12, 12 }, /* tank clock up */
    { 813, 0,  0, 12, 12, 12 }, /* tank clock fault */
};

/* A text or an icon: its place, and what an update repaints. */
typedef struct rain_tank_part_ {
    int16_t x;         /* of the first pen; or of the last, or the middle */
    int16_t y;         /* of the rows from which its glyphs drop */
    uint16_t ink;
    uint16_t ground;
    uint8_t left;
    uint8_t top;
    uint8_t right;
    uint8_t bottom;
    uint8_t longest;   /* bytes of its text */
    uint8_t first;     /* place of its first glyph */
    uint8_t glyphs;
    uint8_t form;      /* of its bitmaps */
    uint8_t alignment;
    uint8_t clearing;
} rain_tank_part_;

#define RAIN_TANK_INK_(part)       ((part)->ink)
#define RAIN_TANK_GROUND_(part)    ((part)->ground)
#define RAIN_TANK_LONGEST_(part)   ((part)->longest)
#define RAIN_TANK_FIRST_(part)     ((part)->first)
#define RAIN_TANK_GLYPHS_(part)    ((part)->glyphs)
#define RAIN_TANK_FORM_(part)      ((part)->form)
#define RAIN_TANK_ALIGNMENT_(part) ((part)->alignment)
#define RAIN_TANK_CLEARING_(part)  ((part)->clearing)
#define RAIN_TANK_DEPTH_(part)     1
#define RAIN_TANK_RAMP_(part)      0
#define RAIN_TANK_NONE_       0
#define RAIN_TANK_CELL_       1
#define RAIN_TANK_PAD_        2
#define RAIN_TANK_BOX_        3
#define RAIN_TANK_AS_ROWS_    0
#define RAIN_TANK_AS_REPEATS_ 1
#define RAIN_TANK_AS_RUNS_    2

static RAIN_TANK_CONST rain_tank_part_ rain_tank_part_start_title_ = {
    RAIN_TANK_START_TITLE_X, RAIN_TANK_START_TITLE_BASELINE - 10, RAIN_TANK_START_TITLE_INK,
    RAIN_TANK_START_TITLE_GROUND, 0, 0, RAIN_TANK_PANEL_WIDTH, RAIN_TANK_PANEL_HEIGHT, 9, 11, 23,
    RAIN_TANK_AS_REPEATS_, RAIN_TANK_CENTRED_ON_X, RAIN_TANK_NONE_,
};

static RAIN_TANK_CONST rain_tank_part_ rain_tank_part_start_message_ = {
    RAIN_TANK_START_MESSAGE_X, RAIN_TANK_START_MESSAGE_BASELINE - 7, RAIN_TANK_START_MESSAGE_INK,
    RAIN_TANK_START_MESSAGE_GROUND, RAIN_TANK_ACROSS_(RAIN_TANK_START_MESSAGE_PADDING_X),
    RAIN_TANK_DOWN_(RAIN_TANK_START_MESSAGE_PADDING_Y),
    RAIN_TANK_ACROSS_(RAIN_TANK_START_MESSAGE_PADDING_X + RAIN_TANK_START_MESSAGE_PADDING_WIDTH),
    RAIN_TANK_DOWN_(RAIN_TANK_START_MESSAGE_PADDING_Y + RAIN_TANK_START_MESSAGE_PADDING_HEIGHT), 24, 62,
    23, RAIN_TANK_AS_REPEATS_, RAIN_TANK_CENTRED_ON_X, RAIN_TANK_PAD_,
};

static RAIN_TANK_CONST rain_tank_part_ rain_tank_part_start_caution_ = {
    RAIN_TANK_START_CAUTION_X, RAIN_TANK_START_CAUTION_BASELINE - 7, RAIN_TANK_START_CAUTION_INK,
    RAIN_TANK_START_CAUTION_GROUND, 0, 0, RAIN_TANK_PANEL_WIDTH, RAIN_TANK_PANEL_HEIGHT, 19, 62, 23,
    RAIN_TANK_AS_REPEATS_, RAIN_TANK_CENTRED_ON_X, RAIN_TANK_NONE_,
};

static RAIN_TANK_CONST rain_tank_part_ rain_tank_part_tank_title_ = {
    RAIN_TANK_TANK_TITLE_X + 1, RAIN_TANK_TANK_TITLE_BASELINE - 8, RAIN_TANK_TANK_TITLE_INK,
    RAIN_TANK_TANK_TITLE_GROUND, 0, 0, RAIN_TANK_PANEL_WIDTH, RAIN_TANK_PANEL_HEIGHT, 9, 34, 28,
    RAIN_TANK_AS_ROWS_, RAIN_TANK_STARTS_AT_X, RAIN_TANK_NONE_,
};

static RAIN_TANK_CONST rain_tank_part_ rain_tank_part_tank_radio_ = {
    RAIN_TANK_TANK_RADIO_X, RAIN_TANK_TANK_RADIO_Y, RAIN_TANK_TANK_RADIO_INK,
    RAIN_TANK_TANK_RADIO_GROUND, RAIN_TANK_ACROSS_(RAIN_TANK_TANK_RADIO_PADDING_X),
    RAIN_TANK_DOWN_(RAIN_TANK_TANK_RADIO_PADDING_Y),
    RAIN_TANK_ACROSS_(RAIN_TANK_TANK_RADIO_PADDING_X + RAIN_TANK_TANK_RADIO_PADDING_WIDTH),
    RAIN_TANK_DOWN_(RAIN_TANK_TANK_RADIO_PADDING_Y + RAIN_TANK_TANK_RADIO_PADDING_HEIGHT), 1, 85, 5,
    RAIN_TANK_AS_REPEATS_, RAIN_TANK_STARTS_AT_X, RAIN_TANK_PAD_,
};

static RAIN_TANK_CONST rain_tank_part_ rain_tank_part_tank_clock_ = {
    RAIN_TANK_TANK_CLOCK_X, RAIN_TANK_TANK_CLOCK_Y, RAIN_TANK_TANK_CLOCK_INK,
    RAIN_TANK_TANK_CLOCK_GROUND, RAIN_TANK_ACROSS_(RAIN_TANK_TANK_CLOCK_PADDING_X),
    RAIN_TANK_DOWN_(RAIN_TANK_TANK_CLOCK_PADDING_Y),
    RAIN_TANK_ACROSS_(RAIN_TANK_TANK_CLOCK_PADDING_X + RAIN_TANK_TANK_CLOCK_PADDING_WIDTH),
    RAIN_TANK_DOWN_(RAIN_TANK_TANK_CLOCK_PADDING_Y + RAIN_TANK_TANK_CLOCK_PADDING_HEIGHT), 1, 90, 6,
    RAIN_TANK_AS_REPEATS_, RAIN_TANK_STARTS_AT_X, RAIN_TANK_PAD_,
};

static RAIN_TANK_CONST rain_tank_part_ rain_tank_part_tank_level_ = {
    RAIN_TANK_TANK_LEVEL_X + 1, RAIN_TANK_TANK_LEVEL_BASELINE - 22, RAIN_TANK_TANK_LEVEL_INK,
    RAIN_TANK_TANK_LEVEL_GROUND, RAIN_TANK_ACROSS_(RAIN_TANK_TANK_LEVEL_PADDING_X),
    RAIN_TANK_DOWN_(RAIN_TANK_TANK_LEVEL_PADDING_Y),
    RAIN_TANK_ACROSS_(RAIN_TANK_TANK_LEVEL_PADDING_X + RAIN_TANK_TANK_LEVEL_PADDING_WIDTH),
    RAIN_TANK_DOWN_(RAIN_TANK_TANK_LEVEL_PADDING_Y + RAIN_TANK_TANK_LEVEL_PADDING_HEIGHT), 3, 0, 11,
    RAIN_TANK_AS_REPEATS_, RAIN_TANK_ENDS_AT_X, RAIN_TANK_PAD_,
};

static RAIN_TANK_CONST rain_tank_part_ rain_tank_part_tank_percent_ = {
    RAIN_TANK_TANK_PERCENT_X + 1, RAIN_TANK_TANK_PERCENT_BASELINE - 8, RAIN_TANK_TANK_PERCENT_INK,
    RAIN_TANK_TANK_PERCENT_GROUND, 0, 0, RAIN_TANK_PANEL_WIDTH, RAIN_TANK_PANEL_HEIGHT, 1, 34, 28,
    RAIN_TANK_AS_ROWS_, RAIN_TANK_STARTS_AT_X, RAIN_TANK_NONE_,
};

static RAIN_TANK_CONST rain_tank_part_ rain_tank_part_tank_volume_ = {
    RAIN_TANK_TANK_VOLUME_X + 1, RAIN_TANK_TANK_VOLUME_BASELINE - 8, RAIN_TANK_TANK_VOLUME_INK,
    RAIN_TANK_TANK_VOLUME_GROUND, RAIN_TANK_ACROSS_(RAIN_TANK_TANK_VOLUME_PADDING_X),
    RAIN_TANK_DOWN_(RAIN_TANK_TANK_VOLUME_PADDING_Y),
    RAIN_TANK_ACROSS_(RAIN_TANK_TANK_VOLUME_PADDING_X + RAIN_TANK_TANK_VOLUME_PADDING_WIDTH),
    RAIN_TANK_DOWN_(RAIN_TANK_TANK_VOLUME_PADDING_Y + RAIN_TANK_TANK_VOLUME_PADDING_HEIGHT), 4, 34, 28,
    RAIN_TANK_AS_ROWS_, RAIN_TANK_ENDS_AT_X, RAIN_TANK_PAD_,
};

static RAIN_TANK_CONST rain_tank_part_ rain_tank_part_tank_litre_ = {
    RAIN_TANK_TANK_LITRE_X + 1, RAIN_TANK_TANK_LITRE_BASELINE - 8, RAIN_TANK_TANK_LITRE_INK,
    RAIN_TANK_TANK_LITRE_GROUND, 0, 0, RAIN_TANK_PANEL_WIDTH, RAIN_TANK_PANEL_HEIGHT, 1, 34, 28,
    RAIN_TANK_AS_ROWS_, RAIN_TANK_STARTS_AT_X, RAIN_TANK_NONE_,
};

static RAIN_TANK_CONST rain_tank_part_ rain_tank_part_tank_flow_ = {
    RAIN_TANK_TANK_FLOW_X + 1, RAIN_TANK_TANK_FLOW_BASELINE - 8, RAIN_TANK_TANK_FLOW_INK,
    RAIN_TANK_TANK_FLOW_GROUND, RAIN_TANK_ACROSS_(RAIN_TANK_TANK_FLOW_PADDING_X),
    RAIN_TANK_DOWN_(RAIN_TANK_TANK_FLOW_PADDING_Y),
    RAIN_TANK_ACROSS_(RAIN_TANK_TANK_FLOW_PADDING_X + RAIN_TANK_TANK_FLOW_PADDING_WIDTH),
    RAIN_TANK_DOWN_(RAIN_TANK_TANK_FLOW_PADDING_Y + RAIN_TANK_TANK_FLOW_PADDING_HEIGHT), 5, 34, 28,
    RAIN_TANK_AS_ROWS_, RAIN_TANK_ENDS_AT_X, RAIN_TANK_PAD_,
};

static RAIN_TANK_CONST rain_tank_part_ rain_tank_part_tank_rate_ = {
    RAIN_TANK_TANK_RATE_X + 1, RAIN_TANK_TANK_RATE_BASELINE - 8, RAIN_TANK_TANK_RATE_INK,
    RAIN_TANK_TANK_RATE_GROUND, 0, 0, RAIN_TANK_PANEL_WIDTH, RAIN_TANK_PANEL_HEIGHT, 5, 34, 28,
    RAIN_TANK_AS_ROWS_, RAIN_TANK_STARTS_AT_X, RAIN_TANK_NONE_,
};

static RAIN_TANK_CONST rain_tank_part_ rain_tank_part_alarm_what_ = {
    RAIN_TANK_ALARM_WHAT_X, RAIN_TANK_ALARM_WHAT_BASELINE - 10, RAIN_TANK_ALARM_WHAT_INK,
    RAIN_TANK_ALARM_WHAT_GROUND, RAIN_TANK_ACROSS_(RAIN_TANK_ALARM_WHAT_PADDING_X),
    RAIN_TANK_DOWN_(RAIN_TANK_ALARM_WHAT_PADDING_Y),
    RAIN_TANK_ACROSS_(RAIN_TANK_ALARM_WHAT_PADDING_X + RAIN_TANK_ALARM_WHAT_PADDING_WIDTH),
    RAIN_TANK_DOWN_(RAIN_TANK_ALARM_WHAT_PADDING_Y + RAIN_TANK_ALARM_WHAT_PADDING_HEIGHT), 14, 11, 23,
    RAIN_TANK_AS_REPEATS_, RAIN_TANK_CENTRED_ON_X, RAIN_TANK_PAD_,
};

static RAIN_TANK_CONST rain_tank_part_ rain_tank_part_alarm_since_word_ = {
    RAIN_TANK_ALARM_SINCE_WORD_X + 1, RAIN_TANK_ALARM_SINCE_WORD_BASELINE - 8,
    RAIN_TANK_ALARM_SINCE_WORD_INK, RAIN_TANK_ALARM_SINCE_WORD_GROUND, 0, 0, RAIN_TANK_PANEL_WIDTH,
    RAIN_TANK_PANEL_HEIGHT, 5, 34, 28, RAIN_TANK_AS_ROWS_, RAIN_TANK_STARTS_AT_X, RAIN_TANK_NONE_,
};

static RAIN_TANK_CONST rain_tank_part_ rain_tank_part_alarm_since_ = {
    RAIN_TANK_ALARM_SINCE_X + 1, RAIN_TANK_ALARM_SINCE_BASELINE - 8, RAIN_TANK_ALARM_SINCE_INK,
    RAIN_TANK_ALARM_SINCE_GROUND, RAIN_TANK_ACROSS_(RAIN_TANK_ALARM_SINCE_PADDING_X),
    RAIN_TANK_DOWN_(RAIN_TANK_ALARM_SINCE_PADDING_Y),
    RAIN_TANK_ACROSS_(RAIN_TANK_ALARM_SINCE_PADDING_X + RAIN_TANK_ALARM_SINCE_PADDING_WIDTH),
    RAIN_TANK_DOWN_(RAIN_TANK_ALARM_SINCE_PADDING_Y + RAIN_TANK_ALARM_SINCE_PADDING_HEIGHT), 5, 34, 28,
    RAIN_TANK_AS_ROWS_, RAIN_TANK_STARTS_AT_X, RAIN_TANK_PAD_,
};

static RAIN_TANK_CONST rain_tank_part_ rain_tank_part_alarm_advice_ = {
    RAIN_TANK_ALARM_ADVICE_X, RAIN_TANK_ALARM_ADVICE_BASELINE - 7, RAIN_TANK_ALARM_ADVICE_INK,
    RAIN_TANK_ALARM_ADVICE_GROUND, 0, 0, RAIN_TANK_PANEL_WIDTH, RAIN_TANK_PANEL_HEIGHT, 21, 62, 23,
    RAIN_TANK_AS_REPEATS_, RAIN_TANK_CENTRED_ON_X, RAIN_TANK_NONE_,
};

/* How far one value lies over another; the pixel that a mark stands on, from 0 at the empty end. */
#define RAIN_TANK_APART_BY_(at, least) ((uint32_t)(at) - (uint32_t)(least))
#define RAIN_TANK_SHARE_(at, least, greatest, length) \
    ((uint64_t)RAIN_TANK_APART_BY_(at, least) * (length) / RAIN_TANK_APART_BY_(greatest, least))
#define RAIN_TANK_MARK_(at, least, greatest, length)                                                             \
    (int16_t)(RAIN_TANK_SHARE_(at, least, greatest, length) < (length) ? RAIN_TANK_SHARE_(at, least, greatest, length) \
                                                                 : (length) - 1)

/* Limits of level bars: how far over the least value, the bar's ink from there, the pixel of the mark (-1: none). */
typedef struct rain_tank_limit_ {
    uint32_t above;
    uint16_t ink;
    int16_t mark;
} rain_tank_limit_;

static RAIN_TANK_CONST rain_tank_limit_ rain_tank_limits_[] = {
    { RAIN_TANK_APART_BY_(RAIN_TANK_TANK_BAR_LIMIT_1, RAIN_TANK_TANK_BAR_LEAST), RAIN_TANK_INK_LIT, (int16_t)(RAIN_TANK_TANK_BAR_HEIGHT - 1 - RAIN_TANK_MARK_(RAIN_TANK_TANK_BAR_LIMIT_1, RAIN_TANK_TANK_BAR_LEAST, RAIN_TANK_TANK_BAR_GREATEST, RAIN_TANK_TANK_BAR_HEIGHT)) },
    { RAIN_TANK_APART_BY_(RAIN_TANK_TANK_BAR_LIMIT_2, RAIN_TANK_TANK_BAR_LEAST), RAIN_TANK_INK_LIT, (int16_t)(RAIN_TANK_TANK_BAR_HEIGHT - 1 - RAIN_TANK_MARK_(RAIN_TANK_TANK_BAR_LIMIT_2, RAIN_TANK_TANK_BAR_LEAST, RAIN_TANK_TANK_BAR_GREATEST, RAIN_TANK_TANK_BAR_HEIGHT)) },
};

/* A level bar: its place, its range, its inks. */
typedef struct rain_tank_meter_ {
    int16_t x;
    int16_t y;
    uint8_t left;
    uint8_t top;
    uint8_t right;
    uint8_t bottom;
} rain_tank_meter_;

#define RAIN_TANK_LEAST_(meter)       RAIN_TANK_TANK_BAR_LEAST
#define RAIN_TANK_SPAN_(meter)        RAIN_TANK_APART_BY_(RAIN_TANK_TANK_BAR_GREATEST, RAIN_TANK_TANK_BAR_LEAST)
#define RAIN_TANK_LENGTH_(meter)      RAIN_TANK_TANK_BAR_HEIGHT
#define RAIN_TANK_BAR_(meter)         RAIN_TANK_TANK_BAR_INK
#define RAIN_TANK_UNDER_(meter)       RAIN_TANK_TANK_BAR_GROUND
#define RAIN_TANK_FIRST_LIMIT_(meter) 0
#define RAIN_TANK_LIMITS_(meter)      2
#define RAIN_TANK_WAY_(meter)         3

static RAIN_TANK_CONST rain_tank_meter_ rain_tank_meter_tank_bar_ = {
    RAIN_TANK_TANK_BAR_X, RAIN_TANK_TANK_BAR_Y, RAIN_TANK_ACROSS_(RAIN_TANK_TANK_BAR_X),
    RAIN_TANK_DOWN_(RAIN_TANK_TANK_BAR_Y),
    RAIN_TANK_ACROSS_(RAIN_TANK_TANK_BAR_X + RAIN_TANK_TANK_BAR_WIDTH),
    RAIN_TANK_DOWN_(RAIN_TANK_TANK_BAR_Y + RAIN_TANK_TANK_BAR_HEIGHT),
};


/* ---- Drawing: one pass over a text or an icon, every pixel painted once, no buffer ------------------------- */

typedef int rain_tank_px_; /* a place in pixels; 16 bits are enough for every text of this layout */
typedef uint16_t rain_tank_count_; /* pixels of the panel */

static void rain_tank_window_(const rain_tank_port *port, rain_tank_px_ x, rain_tank_px_ y, rain_tank_px_ width, rain_tank_px_ height)
{
    port->window(port->context, (uint16_t)x, (uint16_t)y, (uint16_t)width, (uint16_t)height);
}

static void rain_tank_run_(const rain_tank_port *port, uint16_t colour, rain_tank_count_ count)
{
    port->run(port->context, colour, count);
}

/* Fill a rectangle that lies on the panel. */
static void rain_tank_fill_(const rain_tank_port *port, rain_tank_px_ x, rain_tank_px_ y, rain_tank_px_ width, rain_tank_px_ height, uint16_t colour)
{
    const rain_tank_count_ count = (rain_tank_count_)((rain_tank_count_)width * (rain_tank_count_)height);

    if (count) {
        rain_tank_window_(port, x, y, width, height);
        rain_tank_run_(port, colour, count);
    }
}

/* Fill what lies on the panel of a rectangle given by constants. */
#define RAIN_TANK_FILL_(port, x, y, width, height, colour)                                                       \
    rain_tank_fill_(port, RAIN_TANK_ACROSS_(x), RAIN_TANK_DOWN_(y), RAIN_TANK_ACROSS_((x) + (width)) - RAIN_TANK_ACROSS_(x),             \
              RAIN_TANK_DOWN_((y) + (height)) - RAIN_TANK_DOWN_(y), colour)

/* Fetch a constant into memory. */
static void rain_tank_load_(void *to, const void *from, uint8_t bytes)
{
    while (bytes--)
        ((uint8_t *)to)[bytes] = RAIN_TANK_READ8((const uint8_t *)from + bytes);
}

typedef unsigned rain_tank_bit_; /* a bit within one bitmap */
#define RAIN_TANK_FULL_(part) ((1u << RAIN_TANK_DEPTH_(part)) - 1u) /* the level of pure ink */

typedef struct rain_tank_walk_ {   /* a place in a text */
    rain_tank_glyph_ glyph;        /* the glyph at the pen */
    uint8_t place;  /* its place among all, from 1; 0 for none */
    rain_tank_px_ pen;
    const char *next;
} rain_tank_walk_;

typedef struct rain_tank_pass_ {
    rain_tank_walk_ walk, first; /* where it is; where it begins: before the first glyph */
    rain_tank_part_ part;
    uint16_t ink, colour; /* of the part; of the run that is not yet sent */
    rain_tank_count_ count;     /* length of that run */
    rain_tank_px_ x, y;         /* where the next pixel goes */
    const char *end;
    const rain_tank_port *port;
    unsigned bits; /* where the pixels of the glyph's rows begin */
    uint8_t opaque; /* whether ground is painted too */
    uint8_t fixed; /* whether the text lies among the constants */
} rain_tank_pass_;

#define RAIN_TANK_OPAQUE_(pass) ((pass)->opaque)
#define RAIN_TANK_CHAR_(pass, at) \
    (RAIN_TANK_APART_ && (pass)->fixed ? (uint8_t)RAIN_TANK_READ8(at) : *(const uint8_t *)(at))

/* Return the place of a code in an ascending table, counted from 1, or 0 where it is not there. */
static unsigned rain_tank_find_(const uint8_t *codes, unsigned count, uint8_t code)
{
    unsigned low = 0, half;

    while (count > 1) {
        half = count / 2;
        if (RAIN_TANK_READ8(codes + low + half) <= code)
            low += half;
        count -= half;
    }
    return RAIN_TANK_READ8(codes + low) == code ? low + 1 : 0;
}

/* Go on to the next glyph of the text; 0 at its end. A character is its bytes, one after the other as a number;
   those without a glyph are passed over. */
static unsigned rain_tank_step_(rain_tank_pass_ *pass)
{
    rain_tank_walk_ *const walk = &pass->walk;
    unsigned place;

    walk->pen += walk->glyph.advance;
    while (walk->next != pass->end) {
        uint8_t code = RAIN_TANK_CHAR_(pass, walk->next++);
        place = rain_tank_find_(rain_tank_codes_ + RAIN_TANK_FIRST_(&pass->part), RAIN_TANK_GLYPHS_(&pass->part), code);
        if (place) {
            place += RAIN_TANK_FIRST_(&pass->part);
            rain_tank_load_(&walk->glyph, rain_tank_glyphs_ + place - 1, sizeof walk->glyph);
            walk->place = (uint8_t)place;
            return 1;
        }
    }
    return 0;
}

/* Send the run that is not yet sent. */
static void rain_tank_flush_(rain_tank_pass_ *pass)
{
    if (pass->count) {
        if (!RAIN_TANK_OPAQUE_(pass))
            rain_tank_window_(pass->port, pass->x - (rain_tank_px_)pass->count, pass->y, (rain_tank_px_)pass->count, 1);
        rain_tank_run_(pass->port, pass->colour, pass->count);
    }
    pass->count = 0;
}

/* Paint the row up to x with one level; neighbours of one colour become one run. */
static void rain_tank_to_(rain_tank_pass_ *pass, rain_tank_px_ x, unsigned level)
{
    uint16_t colour = level ? pass->ink : RAIN_TANK_GROUND_(&pass->part);

    if (x > (rain_tank_px_)pass->part.right)
        x = pass->part.right;
    if (x <= pass->x)
        return;
    if (colour != pass->colour || (!level && !RAIN_TANK_OPAQUE_(pass)))
        rain_tank_flush_(pass);
    if (level || RAIN_TANK_OPAQUE_(pass))
        pass->count = (rain_tank_count_)(pass->count + (rain_tank_count_)(x - pass->x));
    pass->colour = colour;
    pass->x = x;
}

/* Find the pixels of the glyph at the pen, and return which of the rows there a row of it is. */
static unsigned rain_tank_kept_(rain_tank_pass_ *pass, unsigned row)
{
    const uint8_t *flags = rain_tank_bits_ + pass->walk.glyph.first_byte;
    unsigned n, kept = 0;

    pass->bits = pass->walk.glyph.first_byte;
    if (RAIN_TANK_FORM_(&pass->part) != RAIN_TANK_AS_REPEATS_)
        return row;
    pass->bits += ((unsigned)pass->walk.glyph.height + 7u) >> 3;
    for (n = 1; n <= row; ++n)
        kept += (((unsigned)RAIN_TANK_READ8(flags + (n >> 3)) >> (n & 7)) & 1u) ^ 1u;
    return kept;
}

/* Return the level of a pixel of the glyph at the pen. */
static unsigned rain_tank_level_(const rain_tank_pass_ *pass, rain_tank_bit_ pixel)
{
    const uint8_t *bits = rain_tank_bits_ + pass->bits;

    pixel *= RAIN_TANK_DEPTH_(&pass->part);
    return ((unsigned)RAIN_TANK_READ8(bits + (pixel >> 3)) >> (pixel & 7)) & RAIN_TANK_FULL_(&pass->part);
}

/* Paint a row of the area. No two glyphs of a text lie over one another. */
static void rain_tank_row_(rain_tank_pass_ *pass)
{
    const rain_tank_glyph_ *const glyph = &pass->walk.glyph;

    pass->walk = pass->first;
    while (pass->x < pass->part.right && rain_tank_step_(pass)) {
        const unsigned row = (unsigned)(pass->y - pass->part.y) - glyph->drop;
        rain_tank_px_ x = pass->walk.pen + glyph->left;

        if (row >= (unsigned)glyph->height)
            continue;
        rain_tank_to_(pass, x, 0);
        const rain_tank_bit_ first = (rain_tank_bit_)rain_tank_kept_(pass, row) * (rain_tank_bit_)glyph->width;
        rain_tank_bit_ pixel;

        for (pixel = first; pixel != first + (rain_tank_bit_)glyph->width; ++pixel)
            rain_tank_to_(pass, ++x, rain_tank_level_(pass, pixel));
    }
    rain_tank_to_(pass, pass->part.right, 0);
}

/* Paint the area of the part. */
static void rain_tank_paint_(rain_tank_pass_ *pass)
{
    const rain_tank_px_ left = pass->part.left, top = pass->part.top;

    pass->count = 0;
    pass->colour = 0;
    if (left >= pass->part.right || top >= pass->part.bottom)
        return;
    if (RAIN_TANK_OPAQUE_(pass))
        rain_tank_window_(pass->port, left, top, pass->part.right - left, pass->part.bottom - top);
    for (pass->y = top; pass->y < pass->part.bottom; ++pass->y) {
        pass->x = left;
        rain_tank_row_(pass);
        if (!RAIN_TANK_OPAQUE_(pass))
            rain_tank_flush_(pass);
    }
    rain_tank_flush_(pass);
}

/* Get ready to paint a text; `fixed` tells that it lies among the constants. Return its width. */
static rain_tank_px_ rain_tank_open_(rain_tank_pass_ *pass, const rain_tank_port *port, const rain_tank_part_ *part, const char *text, uint8_t fixed)
{
    rain_tank_px_ width;
    unsigned rest;

    rain_tank_load_(&pass->part, part, sizeof pass->part);
    pass->port = port;
    pass->ink = RAIN_TANK_INK_(&pass->part);
    pass->fixed = fixed;
    pass->end = text ? text : "";
    pass->walk.next = pass->end;
    pass->walk.pen = 0;
    pass->walk.place = 0;
    pass->walk.glyph.advance = 0;
    pass->first = pass->walk;
    for (rest = RAIN_TANK_LONGEST_(&pass->part); rest && RAIN_TANK_CHAR_(pass, pass->end); --rest)
        ++pass->end;
    while (rain_tank_step_(pass)) {
    }
    width = pass->walk.pen;
    pass->first.pen = pass->part.x;
    pass->first.pen -= (width * RAIN_TANK_ALIGNMENT_(&pass->part) - (width * RAIN_TANK_ALIGNMENT_(&pass->part) & 1)) / 2;
    return width;
}

/* Show a text; `fixed` tells that it lies among the constants. */
static void rain_tank_show_(const rain_tank_port *port, const rain_tank_part_ *part, const char *text, uint8_t fixed)
{
    rain_tank_pass_ pass;

    (void)rain_tank_open_(&pass, port, part, text, fixed);
    pass.opaque = RAIN_TANK_CLEARING_(&pass.part) == RAIN_TANK_PAD_;
    rain_tank_paint_(&pass);
}

/* Show an icon: a text of one character, its code the number of the state, from 1. */
static void rain_tank_show_icon_(const rain_tank_port *port, const rain_tank_part_ *part, unsigned states, unsigned state)
{
    char text[2];

    if (state >= states)
        return;
    text[0] = (char)(state + 1);
    text[1] = '\0';
    rain_tank_show_(port, part, text, 0);
}

/* ---- Level bars: every pixel painted once, in one window --------------------------------------------------- */

/* floor(part * length / whole) for a part of a whole and a length of at most 4096, bit by bit: no product that could
   overflow, no division. */
static uint16_t rain_tank_share_(uint32_t part, uint32_t whole, uint16_t length)
{
    uint32_t rest = 0;
    uint16_t share = 0, bit;

    for (bit = 0x1000; bit; bit = (uint16_t)(bit >> 1)) {
        share = (uint16_t)(share << 1);
        if (rest >= whole - rest) {
            rest -= whole - rest;
            ++share;
        } else {
            rest += rest;
        }
        if (!(length & bit))
            continue;
        if (rest >= whole - part) {
            rest -= whole - part;
            ++share;
        } else {
            rest += part;
        }
    }
    return share;
}

/* Return how many pixels of a bar a value fills, and the ink; -1 where it lies outside the range. */
static rain_tank_px_ rain_tank_reached_(const rain_tank_meter_ *meter, int32_t value, uint16_t *ink)
{
    const uint32_t above = (uint32_t)value - (uint32_t)RAIN_TANK_LEAST_(meter);
    rain_tank_limit_ limit;
    uint8_t n;

    (void)meter; /* where all bars are alike, constants say it */
    *ink = RAIN_TANK_BAR_(meter);
    if (above > RAIN_TANK_SPAN_(meter))
        return -1;
    for (n = 0; n < RAIN_TANK_LIMITS_(meter); ++n) {
        rain_tank_load_(&limit, rain_tank_limits_ + RAIN_TANK_FIRST_LIMIT_(meter) + n, sizeof limit);
        if (limit.above <= above)
            *ink = limit.ink;
    }
    return (rain_tank_px_)rain_tank_share_(above, RAIN_TANK_SPAN_(meter), RAIN_TANK_LENGTH_(meter));
}

/* Paint the area of a bar, so many pixels of which are filled; with -1 the fault pattern. */
static void rain_tank_paint_meter_(const rain_tank_port *port, const rain_tank_meter_ *meter, rain_tank_px_ filled, uint16_t ink)
{
    rain_tank_limit_ limit;
    uint8_t n;
    uint16_t colour, last = 0;
    rain_tank_count_ count = 0;
    const rain_tank_px_ from = RAIN_TANK_WAY_(meter) & 1 ? (rain_tank_px_)RAIN_TANK_LENGTH_(meter) - filled : 0;
    rain_tank_px_ x, y, until;

    if (meter->left >= meter->right || meter->top >= meter->bottom)
        return;
    rain_tank_window_(port, meter->left, meter->top, meter->right - meter->left, meter->bottom - meter->top);
    for (y = meter->top; y < meter->bottom; ++y) {
        for (x = meter->left; x < meter->right; x = until) {
            const rain_tank_px_ at = y - meter->y;
            const uint8_t full = at >= from && at < from + filled;

            colour = full ? ink : RAIN_TANK_UNDER_(meter);
            until = full ? from + filled : at < from ? from : (rain_tank_px_)RAIN_TANK_LENGTH_(meter);
            for (n = 0; n < RAIN_TANK_LIMITS_(meter); ++n) {
                rain_tank_load_(&limit, rain_tank_limits_ + RAIN_TANK_FIRST_LIMIT_(meter) + n, sizeof limit);
                if (limit.mark == at) {
                    colour = full ? RAIN_TANK_UNDER_(meter) : limit.ink;
                    until = at + 1;
                } else if (limit.mark > at && limit.mark < until) {
                    until = limit.mark;
                }
            }
            if (filled < 0) {
                colour = (x - meter->x + y - meter->y) & 3 ? RAIN_TANK_UNDER_(meter) : ink;
                until = x + 1;
            } else {
                until = meter->right;
                if (until > meter->right)
                    until = meter->right;
            }
            if (colour != last && count) {
                rain_tank_run_(port, last, count);
                count = 0;
            }
            last = colour;
            count = (rain_tank_count_)(count + (rain_tank_count_)(until - x));
        }
    }
    rain_tank_run_(port, last, count);
}

/* Show a value, or the fault pattern where it lies outside the range. */
static void rain_tank_show_meter_(const rain_tank_port *port, const rain_tank_meter_ *constant, int32_t value)
{
    rain_tank_meter_ meter;
    rain_tank_px_ filled;
    uint16_t ink;

    rain_tank_load_(&meter, constant, sizeof meter);
    filled = rain_tank_reached_(&meter, value, &ink);
    rain_tank_paint_meter_(port, &meter, filled, ink);
}

/* ---- Screens ----------------------------------------------------------------------------------------------- */

void rain_tank_start_draw(const rain_tank_port *port, const rain_tank_start_values *values)
{
    RAIN_TANK_FILL_(port, 0, 0, RAIN_TANK_PANEL_WIDTH, RAIN_TANK_PANEL_HEIGHT, RAIN_TANK_START_GROUND);
    rain_tank_show_(port, &rain_tank_part_start_title_, rain_tank_text_start_title_, 1);
    RAIN_TANK_FILL_(port, RAIN_TANK_START_LINE_X, RAIN_TANK_START_LINE_Y, RAIN_TANK_START_LINE_LENGTH,
                    RAIN_TANK_START_LINE_THICKNESS, RAIN_TANK_START_LINE_INK);
    rain_tank_show_(port, &rain_tank_part_start_message_, values->message, 0);
    rain_tank_show_(port, &rain_tank_part_start_caution_, rain_tank_text_start_caution_, 1);
}

void rain_tank_tank_draw(const rain_tank_port *port, const rain_tank_tank_values *values)
{
    RAIN_TANK_FILL_(port, 0, 0, RAIN_TANK_PANEL_WIDTH, RAIN_TANK_PANEL_HEIGHT, RAIN_TANK_TANK_GROUND);
    rain_tank_show_(port, &rain_tank_part_tank_title_, rain_tank_text_tank_title_, 1);
    rain_tank_show_icon_(port, &rain_tank_part_tank_radio_, RAIN_TANK_TANK_RADIO_STATES, values->radio);
    rain_tank_show_icon_(port, &rain_tank_part_tank_clock_, RAIN_TANK_TANK_CLOCK_STATES, values->clock);
    RAIN_TANK_FILL_(port, RAIN_TANK_TANK_LINE_X, RAIN_TANK_TANK_LINE_Y, RAIN_TANK_TANK_LINE_LENGTH,
                    RAIN_TANK_TANK_LINE_THICKNESS, RAIN_TANK_TANK_LINE_INK);
    rain_tank_show_(port, &rain_tank_part_tank_level_, values->level, 0);
    rain_tank_show_(port, &rain_tank_part_tank_percent_, rain_tank_text_tank_percent_, 1);
    RAIN_TANK_FILL_(port, RAIN_TANK_TANK_TANK_X, RAIN_TANK_TANK_TANK_Y, RAIN_TANK_TANK_TANK_WIDTH,
                    RAIN_TANK_TANK_TANK_THICKNESS, RAIN_TANK_TANK_TANK_OUTLINE);
    RAIN_TANK_FILL_(port, RAIN_TANK_TANK_TANK_X,
                    RAIN_TANK_TANK_TANK_Y + RAIN_TANK_TANK_TANK_HEIGHT - RAIN_TANK_TANK_TANK_THICKNESS,
                    RAIN_TANK_TANK_TANK_WIDTH, RAIN_TANK_TANK_TANK_THICKNESS, RAIN_TANK_TANK_TANK_OUTLINE);
    RAIN_TANK_FILL_(port, RAIN_TANK_TANK_TANK_X, RAIN_TANK_TANK_TANK_Y + RAIN_TANK_TANK_TANK_THICKNESS,
                    RAIN_TANK_TANK_TANK_THICKNESS, RAIN_TANK_TANK_TANK_HEIGHT - 2 * RAIN_TANK_TANK_TANK_THICKNESS,
                    RAIN_TANK_TANK_TANK_OUTLINE);
    RAIN_TANK_FILL_(port, RAIN_TANK_TANK_TANK_X + RAIN_TANK_TANK_TANK_WIDTH - RAIN_TANK_TANK_TANK_THICKNESS,
                    RAIN_TANK_TANK_TANK_Y + RAIN_TANK_TANK_TANK_THICKNESS, RAIN_TANK_TANK_TANK_THICKNESS,
                    RAIN_TANK_TANK_TANK_HEIGHT - 2 * RAIN_TANK_TANK_TANK_THICKNESS, RAIN_TANK_TANK_TANK_OUTLINE);
    rain_tank_show_meter_(port, &rain_tank_meter_tank_bar_, values->bar);
    rain_tank_show_(port, &rain_tank_part_tank_volume_, values->volume, 0);
    rain_tank_show_(port, &rain_tank_part_tank_litre_, rain_tank_text_tank_litre_, 1);
    rain_tank_show_(port, &rain_tank_part_tank_flow_, values->flow, 0);
    rain_tank_show_(port, &rain_tank_part_tank_rate_, rain_tank_text_tank_rate_, 1);
}

void rain_tank_alarm_draw(const rain_tank_port *port, const rain_tank_alarm_values *values)
{
    RAIN_TANK_FILL_(port, 0, 0, RAIN_TANK_PANEL_WIDTH, RAIN_TANK_PANEL_HEIGHT, RAIN_TANK_ALARM_GROUND);
    RAIN_TANK_FILL_(port, RAIN_TANK_ALARM_BANNER_X, RAIN_TANK_ALARM_BANNER_Y, RAIN_TANK_ALARM_BANNER_WIDTH,
                    RAIN_TANK_ALARM_BANNER_HEIGHT, RAIN_TANK_ALARM_BANNER_FILL);
    rain_tank_show_(port, &rain_tank_part_alarm_what_, values->what, 0);
    rain_tank_show_(port, &rain_tank_part_alarm_since_word_, rain_tank_text_alarm_since_word_, 1);
    rain_tank_show_(port, &rain_tank_part_alarm_since_, values->since, 0);
    rain_tank_show_(port, &rain_tank_part_alarm_advice_, rain_tank_text_alarm_advice_, 1);
}

/* ---- Texts of fields --------------------------------------------------------------------------------------- */

#ifndef RAIN_TANK_NO_TEXT_FUNCTIONS
#include <float.h>
#include <stdio.h>

/* Copy a text, as much of it as there is room for; return its bytes. `fixed` tells that it lies among the constants. */
static int rain_tank_copy_(char *buffer, size_t room, const char *text, uint8_t fixed)
{
    size_t bytes = 0;

    for (; bytes + 1 < room; ++bytes, ++text) {
        buffer[bytes] = RAIN_TANK_APART_ && fixed ? (char)RAIN_TANK_READ8(text) : *text;
        if (!buffer[bytes])
            return (int)bytes;
    }
    buffer[bytes] = '\0';
    return (int)bytes;
}

/* Return a text of a row of texts that each end with a zero. */
static const char *rain_tank_choice_(const char *texts, int choice)
{
    for (; choice; --choice)
        while (RAIN_TANK_READ8(texts++)) {
        }
    return texts;
}

typedef uint32_t rain_tank_scaled_; /* a real times a power of ten */

/* Return the size of a real times a power of ten, rounded just as the C library prints it: to the nearest whole
   number, of two as near to the even one. A double is taken apart as IEEE 754 has it, in 64 or in 32 bits. */
static rain_tank_scaled_ rain_tank_round_(double value, uint32_t scale)
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
    uint32_t low;

    for (n = 0; n < sizeof bits; ++n)
        ((uint8_t *)&bits)[n] = ((const uint8_t *)&value)[n];
    shift = (int)(bits >> 23 & 0xFF);
    bits &= 0x7FFFFFu;
    bits |= (uint32_t)(shift != 0) << 23;
    shift = 150 - (shift ? shift : 1);
    low = (uint32_t)((uint32_t)bits * scale);
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
    return (rain_tank_scaled_)(low + (odd && (rest || (low & 1))));
}

/* Tell whether the sign of a real is set, of -0.0 too. */
static uint8_t rain_tank_negative_(double value)
{
    const uint16_t one = 1;

    return ((const uint8_t *)&value)[*(const uint8_t *)&one ? sizeof value - 1 : 0] >> 7;
}

/* Write a number with so many of its digits behind the point, and return where in the room it begins. */
static const char *rain_tank_decimal_(char *room, size_t bytes, rain_tank_scaled_ number, char sign, uint8_t places, size_t width)
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

int rain_tank_start_message_text(char *buffer, int choice)
{
    static RAIN_TANK_CONST char texts[] = "Waking the float\000Joining the garden radio\000Setting the clock\000Ready";

    if (choice < 0 || choice >= 4)
        return -1;
    return rain_tank_copy_(buffer, RAIN_TANK_START_MESSAGE_TEXT_BYTES, rain_tank_choice_(texts, choice), 1);
}

int rain_tank_tank_level_text(char *buffer, unsigned int value)
{
    static RAIN_TANK_CONST char fault[] = RAIN_TANK_TANK_LEVEL_FAULT;

    if (value > RAIN_TANK_TANK_LEVEL_GREATEST)
        return rain_tank_copy_(buffer, RAIN_TANK_TANK_LEVEL_TEXT_BYTES, fault, 1);
    return snprintf(buffer, RAIN_TANK_TANK_LEVEL_TEXT_BYTES, RAIN_TANK_TANK_LEVEL_FORMAT, value);
}

int rain_tank_tank_volume_text(char *buffer, unsigned int value)
{
    static RAIN_TANK_CONST char fault[] = RAIN_TANK_TANK_VOLUME_FAULT;

    if (value > RAIN_TANK_TANK_VOLUME_GREATEST)
        return rain_tank_copy_(buffer, RAIN_TANK_TANK_VOLUME_TEXT_BYTES, fault, 1);
    return snprintf(buffer, RAIN_TANK_TANK_VOLUME_TEXT_BYTES, RAIN_TANK_TANK_VOLUME_FORMAT, value);
}

int rain_tank_tank_flow_text(char *buffer, double value)
{
    static RAIN_TANK_CONST char fault[] = RAIN_TANK_TANK_FLOW_FAULT;
    rain_tank_scaled_ number;
    char decimal[6];
    const char *real;

    if (!(value >= RAIN_TANK_TANK_FLOW_LEAST && value <= RAIN_TANK_TANK_FLOW_GREATEST))
        return rain_tank_copy_(buffer, RAIN_TANK_TANK_FLOW_TEXT_BYTES, fault, 1);
    number = rain_tank_round_(value, 10u);
#if DBL_MANT_DIG == 24
    if (number > (rain_tank_negative_(value) ? 999u : 999u))
        return rain_tank_copy_(buffer, RAIN_TANK_TANK_FLOW_TEXT_BYTES, fault, 1);
#endif
    real = rain_tank_decimal_(decimal, sizeof decimal, number, rain_tank_negative_(value) ? '-' : '+', 1, 0);
    return snprintf(buffer, RAIN_TANK_TANK_FLOW_TEXT_BYTES, "%s", real);
}

int rain_tank_tank_flow_text_scaled(char *buffer, int32_t scaled)
{
    static RAIN_TANK_CONST char fault[] = RAIN_TANK_TANK_FLOW_FAULT;
    char decimal[6];
    const char *real;

    if (scaled < (-999) || scaled > 999)
        return rain_tank_copy_(buffer, RAIN_TANK_TANK_FLOW_TEXT_BYTES, fault, 1);
    real = rain_tank_decimal_(decimal, sizeof decimal, (rain_tank_scaled_)(scaled < 0 ? -scaled : scaled),
                              scaled < 0 ? '-' : '+', 1, 0);
    return snprintf(buffer, RAIN_TANK_TANK_FLOW_TEXT_BYTES, "%s", real);
}

int rain_tank_alarm_what_text(char *buffer, int choice)
{
    static RAIN_TANK_CONST char texts[] = "Tank overflows\000Tank empty\000Float is lost\000Pump runs dry";

    if (choice < 0 || choice >= 4)
        return -1;
    return rain_tank_copy_(buffer, RAIN_TANK_ALARM_WHAT_TEXT_BYTES, rain_tank_choice_(texts, choice), 1);
}

int rain_tank_alarm_since_text(char *buffer, unsigned int value_1, unsigned int value_2)
{
    static RAIN_TANK_CONST char fault[] = RAIN_TANK_ALARM_SINCE_FAULT;

    if (value_1 > RAIN_TANK_ALARM_SINCE_GREATEST_1)
        return rain_tank_copy_(buffer, RAIN_TANK_ALARM_SINCE_TEXT_BYTES, fault, 1);
    if (value_2 > RAIN_TANK_ALARM_SINCE_GREATEST_2)
        return rain_tank_copy_(buffer, RAIN_TANK_ALARM_SINCE_TEXT_BYTES, fault, 1);
    return snprintf(buffer, RAIN_TANK_ALARM_SINCE_TEXT_BYTES, RAIN_TANK_ALARM_SINCE_FORMAT, value_1, value_2);
}
#endif /* RAIN_TANK_NO_TEXT_FUNCTIONS */

#endif /* RAIN_TANK_IMPLEMENTATION */

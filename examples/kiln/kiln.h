/* kiln: what the panel shows, 240 x 135 pixels, proved by Panelproof for every value it can ever show.

   How to use it

     1. Include this header wherever its constants or functions are needed.
     2. In one source file, before that line:  #define KILN_IMPLEMENTATION
     3. Make a port of the type kiln_port: two functions of yours that write pixels, and a pointer for them.
     4. Fill in values of the type kiln_start_values and call kiln_start_draw(&port, &values) to draw a screen.
     5. Get the text of a field from kiln_start_message_text(buffer, ...) and show it with
        kiln_start_message_update(&port, buffer).

   Define KILN_NO_CHANGES to leave out the functions that send only what differs.
   Define KILN_NO_TEXT_FUNCTIONS to leave out the functions that print texts, and <stdio.h> with them.
   Where constants live apart from memory, define KILN_CONST, KILN_READ8, KILN_READ16 and KILN_READ32 before the
   implementation.
   Where the display has red and blue the other way round, or takes the low byte of a colour first, define
   KILN_BLUE_FIRST or KILN_LOW_BYTE_FIRST before the implementation: `run` gets its colours so.

   layout     kiln
   digest     sha256 833f883456c3772ce858173a30f9034734a326db02a33a13433bc4072735eba3
   format     1
   made by    Panelproof 0.1.0
   type       reading: SourceSansPro-Semibold.ttf, 46 px, antialiased, FreeType 2.13.2
   type       heading: SourceSansPro-Semibold.ttf, 24 px, one-bit, FreeType 2.13.2
   type       text: SourceSansPro-Regular.ttf, 18 px, one-bit, FreeType 2.13.2

   Made by Panelproof; change the layout, not this file. Not a safety device: a proof of pixels, not of measurements.
   Local codes and licensed practice come first. */

#ifndef KILN_HEADER_
#define KILN_HEADER_

#include <stddef.h>
#include <stdint.h>

/* SHA-256 of the layout's file */
#define KILN_LAYOUT_DIGEST "833f883456c3772ce858173a30f9034734a326db02a33a13433bc4072735eba3"

/* The panel */
#define KILN_PANEL_WIDTH  240 /* px */
#define KILN_PANEL_HEIGHT 135 /* px */

/* How a text lies at its x */
#define KILN_STARTS_AT_X  0
#define KILN_CENTRED_ON_X 1
#define KILN_ENDS_AT_X    2

/* Inks, as the panel's colours (16 bits: 5 red, 6 green, 5 blue) */
#define KILN_INK_SOOT  0x0000 /* #000000 */
#define KILN_INK_SLATE 0x2188 /* #203040 */
#define KILN_INK_CHALK 0xFFFF /* #ffffff */
#define KILN_INK_ASH   0x9D55 /* #a0a8b0 */
#define KILN_INK_GLOW  0xFD68 /* #ffb040 */
#define KILN_INK_LEAF  0x66EE /* #60e070 */
#define KILN_INK_ALARM 0xFA88 /* #ff5040 */

/* Types: the height of a line */
#define KILN_TYPE_READING_ASCENT  46 /* px over the baseline */
#define KILN_TYPE_READING_DESCENT 13 /* px under the baseline */
#define KILN_TYPE_HEADING_ASCENT  24 /* px over the baseline */
#define KILN_TYPE_HEADING_DESCENT 7  /* px under the baseline */
#define KILN_TYPE_TEXT_ASCENT     18 /* px over the baseline */
#define KILN_TYPE_TEXT_DESCENT    5  /* px under the baseline */

/* ---- Screen `start` --------------------------------------------------------------------------------------------- */

#define KILN_START_GROUND KILN_INK_SOOT

/* label `title` */
#define KILN_START_TITLE_X         120               /* px */
#define KILN_START_TITLE_BASELINE  48                /* px */
#define KILN_START_TITLE_ALIGNMENT KILN_CENTRED_ON_X
#define KILN_START_TITLE_INK       KILN_INK_GLOW
#define KILN_START_TITLE_GROUND    KILN_INK_SOOT
#define KILN_START_TITLE_TEXT      "Kiln"

/* rule `line` */
#define KILN_START_LINE_X         40             /* px */
#define KILN_START_LINE_Y         60             /* px */
#define KILN_START_LINE_LENGTH    160            /* px across */
#define KILN_START_LINE_THICKNESS 2              /* px */
#define KILN_START_LINE_INK       KILN_INK_SLATE

/* field `message`, clearing: pad */
#define KILN_START_MESSAGE_X                                 120               /* px */
#define KILN_START_MESSAGE_BASELINE                          88                /* px */
#define KILN_START_MESSAGE_ALIGNMENT                         KILN_CENTRED_ON_X
#define KILN_START_MESSAGE_INK                               KILN_INK_CHALK
#define KILN_START_MESSAGE_GROUND                            KILN_INK_SOOT
#define KILN_START_MESSAGE_PADDING_X                         10                /* px */
#define KILN_START_MESSAGE_PADDING_Y                         70                /* px */
#define KILN_START_MESSAGE_PADDING_WIDTH                     220               /* px */
#define KILN_START_MESSAGE_PADDING_HEIGHT                    26                /* px */
#define KILN_START_MESSAGE_TEXT_BYTES                        27                /* the text's buffer, terminator included */
#define KILN_START_MESSAGE_FORMAT                            "%s"
#define KILN_START_MESSAGE_CHOICE_STARTING                   0                 /* "Starting" */
#define KILN_START_MESSAGE_CHOICE_CHECKING_THE_PROBE         1                 /* "Checking the probe" */
#define KILN_START_MESSAGE_CHOICE_JOINING_THE_WORKSHOP_RADIO 2                 /* "Joining the workshop radio" */
#define KILN_START_MESSAGE_CHOICE_ASKING_THE_LOGGING_SERVER  3                 /* "Asking the logging server" */
#define KILN_START_MESSAGE_CHOICE_SETTING_THE_CLOCK          4                 /* "Setting the clock" */
#define KILN_START_MESSAGE_CHOICE_READY                      5                 /* "Ready" */

/* label `caution` */
#define KILN_START_CAUTION_X         120                   /* px */
#define KILN_START_CAUTION_BASELINE  124                   /* px */
#define KILN_START_CAUTION_ALIGNMENT KILN_CENTRED_ON_X
#define KILN_START_CAUTION_INK       KILN_INK_ASH
#define KILN_START_CAUTION_GROUND    KILN_INK_SOOT
#define KILN_START_CAUTION_TEXT      "Not a safety device"

/* ---- Screen `readings` ------------------------------------------------------------------------------------------ */

#define KILN_READINGS_GROUND KILN_INK_SOOT

/* box `bar` */
#define KILN_READINGS_BAR_X      0              /* px */
#define KILN_READINGS_BAR_Y      0              /* px */
#define KILN_READINGS_BAR_WIDTH  240            /* px */
#define KILN_READINGS_BAR_HEIGHT 24             /* px */
#define KILN_READINGS_BAR_FILL   KILN_INK_SLATE

/* label `title` */
#define KILN_READINGS_TITLE_X         6                /* px */
#define KILN_READINGS_TITLE_BASELINE  17               /* px */
#define KILN_READINGS_TITLE_ALIGNMENT KILN_STARTS_AT_X
#define KILN_READINGS_TITLE_INK       KILN_INK_CHALK
#define KILN_READINGS_TITLE_GROUND    KILN_INK_SLATE
#define KILN_READINGS_TITLE_TEXT      "Kiln"

/* icon `radio`, clearing: pad */
#define KILN_READINGS_RADIO_X              196                   /* px */
#define KILN_READINGS_RADIO_Y              5                     /* px */
#define KILN_READINGS_RADIO_INK            KILN_INK_CHALK
#define KILN_READINGS_RADIO_GROUND         KILN_INK_SLATE
#define KILN_READINGS_RADIO_PADDING_X      KILN_READINGS_RADIO_X /* px */
#define KILN_READINGS_RADIO_PADDING_Y      KILN_READINGS_RADIO_Y /* px */
#define KILN_READINGS_RADIO_PADDING_WIDTH  14                    /* px */
#define KILN_READINGS_RADIO_PADDING_HEIGHT 14                    /* px */
#define KILN_READINGS_RADIO_STATE_OFF      0
#define KILN_READINGS_RADIO_STATE_TRYING_1 1
#define KILN_READINGS_RADIO_STATE_TRYING_2 2
#define KILN_READINGS_RADIO_STATE_UP       3
#define KILN_READINGS_RADIO_STATE_FAULT    4
#define KILN_READINGS_RADIO_STATES         5

/* icon `server`, clearing: pad */
#define KILN_READINGS_SERVER_X              220                    /* px */
#define KILN_READINGS_SERVER_Y              5                      /* px */
#define KILN_READINGS_SERVER_INK            KILN_INK_CHALK
#define KILN_READINGS_SERVER_GROUND         KILN_INK_SLATE
#define KILN_READINGS_SERVER_PADDING_X      KILN_READINGS_SERVER_X /* px */
#define KILN_READINGS_SERVER_PADDING_Y      KILN_READINGS_SERVER_Y /* px */
#define KILN_READINGS_SERVER_PADDING_WIDTH  14                     /* px */
#define KILN_READINGS_SERVER_PADDING_HEIGHT 14                     /* px */
#define KILN_READINGS_SERVER_STATE_OFF      0
#define KILN_READINGS_SERVER_STATE_TRYING_1 1
#define KILN_READINGS_SERVER_STATE_TRYING_2 2
#define KILN_READINGS_SERVER_STATE_UP       3
#define KILN_READINGS_SERVER_STATE_FAULT    4
#define KILN_READINGS_SERVER_STATES         5

/* field `chamber`, clearing: pad */
#define KILN_READINGS_CHAMBER_X              196            /* px */
#define KILN_READINGS_CHAMBER_BASELINE       70             /* px */
#define KILN_READINGS_CHAMBER_ALIGNMENT      KILN_ENDS_AT_X
#define KILN_READINGS_CHAMBER_INK            KILN_INK_GLOW
#define KILN_READINGS_CHAMBER_GROUND         KILN_INK_SOOT
#define KILN_READINGS_CHAMBER_PADDING_X      6              /* px */
#define KILN_READINGS_CHAMBER_PADDING_Y      30             /* px */
#define KILN_READINGS_CHAMBER_PADDING_WIDTH  192            /* px */
#define KILN_READINGS_CHAMBER_PADDING_HEIGHT 50             /* px */
#define KILN_READINGS_CHAMBER_TEXT_BYTES     9              /* the text's buffer, terminator included */
#define KILN_READINGS_CHAMBER_FORMAT         "%d"
#define KILN_READINGS_CHAMBER_LEAST          (-20)
#define KILN_READINGS_CHAMBER_GREATEST       1320
#define KILN_READINGS_CHAMBER_FAULT          "no probe"
#define KILN_READINGS_CHAMBER_FIRST          "--"

/* label `unit` */
#define KILN_READINGS_UNIT_X         203              /* px */
#define KILN_READINGS_UNIT_BASELINE  70               /* px */
#define KILN_READINGS_UNIT_ALIGNMENT KILN_STARTS_AT_X
#define KILN_READINGS_UNIT_INK       KILN_INK_GLOW
#define KILN_READINGS_UNIT_GROUND    KILN_INK_SOOT
#define KILN_READINGS_UNIT_TEXT      "\302\260C"

/* rule `line` */
#define KILN_READINGS_LINE_X         6              /* px */
#define KILN_READINGS_LINE_Y         84             /* px */
#define KILN_READINGS_LINE_LENGTH    228            /* px across */
#define KILN_READINGS_LINE_THICKNESS 1              /* px */
#define KILN_READINGS_LINE_INK       KILN_INK_SLATE

/* label `set-word` */
#define KILN_READINGS_SET_WORD_X         6                /* px */
#define KILN_READINGS_SET_WORD_BASELINE  106              /* px */
#define KILN_READINGS_SET_WORD_ALIGNMENT KILN_STARTS_AT_X
#define KILN_READINGS_SET_WORD_INK       KILN_INK_ASH
#define KILN_READINGS_SET_WORD_GROUND    KILN_INK_SOOT
#define KILN_READINGS_SET_WORD_TEXT      "Set"

/* field `set-point`, clearing: pad */
#define KILN_READINGS_SET_POINT_X              104            /* px */
#define KILN_READINGS_SET_POINT_BASELINE       106            /* px */
#define KILN_READINGS_SET_POINT_ALIGNMENT      KILN_ENDS_AT_X
#define KILN_READINGS_SET_POINT_INK            KILN_INK_CHALK
#define KILN_READINGS_SET_POINT_GROUND         KILN_INK_SOOT
#define KILN_READINGS_SET_POINT_PADDING_X      34             /* px */
#define KILN_READINGS_SET_POINT_PADDING_Y      90             /* px */
#define KILN_READINGS_SET_POINT_PADDING_WIDTH  72             /* px */
#define KILN_READINGS_SET_POINT_PADDING_HEIGHT 22             /* px */
#define KILN_READINGS_SET_POINT_TEXT_BYTES     9              /* the text's buffer, terminator included */
#define KILN_READINGS_SET_POINT_FORMAT         "%u \302\260C"
#define KILN_READINGS_SET_POINT_LEAST          0U
#define KILN_READINGS_SET_POINT_GREATEST       1300U
#define KILN_READINGS_SET_POINT_STEP           5U
#define KILN_READINGS_SET_POINT_FAULT          "?"
#define KILN_READINGS_SET_POINT_FIRST          "-- \302\260C"

/* field `phase`, clearing: pad */
#define KILN_READINGS_PHASE_X               234            /* px */
#define KILN_READINGS_PHASE_BASELINE        106            /* px */
#define KILN_READINGS_PHASE_ALIGNMENT       KILN_ENDS_AT_X
#define KILN_READINGS_PHASE_INK             KILN_INK_CHALK
#define KILN_READINGS_PHASE_GROUND          KILN_INK_SOOT
#define KILN_READINGS_PHASE_PADDING_X       150            /* px */
#define KILN_READINGS_PHASE_PADDING_Y       90             /* px */
#define KILN_READINGS_PHASE_PADDING_WIDTH   84             /* px */
#define KILN_READINGS_PHASE_PADDING_HEIGHT  22             /* px */
#define KILN_READINGS_PHASE_TEXT_BYTES      9              /* the text's buffer, terminator included */
#define KILN_READINGS_PHASE_FORMAT          "%s"
#define KILN_READINGS_PHASE_CHOICE_IDLE     0              /* "idle" */
#define KILN_READINGS_PHASE_CHOICE_WARMING  1              /* "warming" */
#define KILN_READINGS_PHASE_CHOICE_RAMP_1   2              /* "ramp 1" */
#define KILN_READINGS_PHASE_CHOICE_RAMP_2   3              /* "ramp 2" */
#define KILN_READINGS_PHASE_CHOICE_RAMP_3   4              /* "ramp 3" */
#define KILN_READINGS_PHASE_CHOICE_SOAK     5              /* "soak" */
#define KILN_READINGS_PHASE_CHOICE_COOLING  6              /* "cooling" */
#define KILN_READINGS_PHASE_CHOICE_FINISHED 7              /* "finished" */
#define KILN_READINGS_PHASE_FAULT           "?"

/* field `left`, clearing: pad */
#define KILN_READINGS_LEFT_X              6                     /* px */
#define KILN_READINGS_LEFT_BASELINE       128                   /* px */
#define KILN_READINGS_LEFT_ALIGNMENT      KILN_STARTS_AT_X
#define KILN_READINGS_LEFT_INK            KILN_INK_ASH
#define KILN_READINGS_LEFT_GROUND         KILN_INK_SOOT
#define KILN_READINGS_LEFT_PADDING_X      4                     /* px */
#define KILN_READINGS_LEFT_PADDING_Y      112                   /* px */
#define KILN_READINGS_LEFT_PADDING_WIDTH  140                   /* px */
#define KILN_READINGS_LEFT_PADDING_HEIGHT 22                    /* px */
#define KILN_READINGS_LEFT_TEXT_BYTES     18                    /* the text's buffer, terminator included */
#define KILN_READINGS_LEFT_FORMAT         "%u h %02u min to go"
#define KILN_READINGS_LEFT_LEAST_1        0U
#define KILN_READINGS_LEFT_GREATEST_1     47U
#define KILN_READINGS_LEFT_LEAST_2        0U
#define KILN_READINGS_LEFT_GREATEST_2     59U
#define KILN_READINGS_LEFT_FAULT          "time not known"
#define KILN_READINGS_LEFT_FIRST          "time not known"

/* ---- Screen `fault` --------------------------------------------------------------------------------------------- */

#define KILN_FAULT_GROUND KILN_INK_SOOT

/* box `frame` */
#define KILN_FAULT_FRAME_X         3              /* px */
#define KILN_FAULT_FRAME_Y         3              /* px */
#define KILN_FAULT_FRAME_WIDTH     234            /* px */
#define KILN_FAULT_FRAME_HEIGHT    129            /* px */
#define KILN_FAULT_FRAME_THICKNESS 3              /* px of the outline, inwards */
#define KILN_FAULT_FRAME_OUTLINE   KILN_INK_ALARM

/* label `title` */
#define KILN_FAULT_TITLE_X         120               /* px */
#define KILN_FAULT_TITLE_BASELINE  38                /* px */
#define KILN_FAULT_TITLE_ALIGNMENT KILN_CENTRED_ON_X
#define KILN_FAULT_TITLE_INK       KILN_INK_ALARM
#define KILN_FAULT_TITLE_GROUND    KILN_INK_SOOT
#define KILN_FAULT_TITLE_TEXT      "Fault"

/* field `reason`, clearing: pad */
#define KILN_FAULT_REASON_X                           120                /* px */
#define KILN_FAULT_REASON_BASELINE                    70                 /* px */
#define KILN_FAULT_REASON_ALIGNMENT                   KILN_CENTRED_ON_X
#define KILN_FAULT_REASON_INK                         KILN_INK_CHALK
#define KILN_FAULT_REASON_GROUND                      KILN_INK_SOOT
#define KILN_FAULT_REASON_PADDING_X                   20                 /* px */
#define KILN_FAULT_REASON_PADDING_Y                   54                 /* px */
#define KILN_FAULT_REASON_PADDING_WIDTH               200                /* px */
#define KILN_FAULT_REASON_PADDING_HEIGHT              22                 /* px */
#define KILN_FAULT_REASON_TEXT_BYTES                  21                 /* the text's buffer, terminator included */
#define KILN_FAULT_REASON_FORMAT                      "%s"
#define KILN_FAULT_REASON_CHOICE_THERMOCOUPLE_OPEN    0                  /* "Thermocouple open" */
#define KILN_FAULT_REASON_CHOICE_THERMOCOUPLE_SHORTED 1                  /* "Thermocouple shorted" */
#define KILN_FAULT_REASON_CHOICE_HEATING_TOO_SLOWLY   2                  /* "Heating too slowly" */
#define KILN_FAULT_REASON_CHOICE_HOTTER_THAN_SET      3                  /* "Hotter than set" */
#define KILN_FAULT_REASON_CHOICE_CONTROLLER_TOO_WARM  4                  /* "Controller too warm" */
#define KILN_FAULT_REASON_FAULT                       "Reason not known"

/* field `last`, clearing: pad */
#define KILN_FAULT_LAST_X              120                         /* px */
#define KILN_FAULT_LAST_BASELINE       95                          /* px */
#define KILN_FAULT_LAST_ALIGNMENT      KILN_CENTRED_ON_X
#define KILN_FAULT_LAST_INK            KILN_INK_ASH
#define KILN_FAULT_LAST_GROUND         KILN_INK_SOOT
#define KILN_FAULT_LAST_PADDING_X      20                          /* px */
#define KILN_FAULT_LAST_PADDING_Y      79                          /* px */
#define KILN_FAULT_LAST_PADDING_WIDTH  200                         /* px */
#define KILN_FAULT_LAST_PADDING_HEIGHT 22                          /* px */
#define KILN_FAULT_LAST_TEXT_BYTES     22                          /* the text's buffer, terminator included */
#define KILN_FAULT_LAST_FORMAT         "last reading %d \302\260C"
#define KILN_FAULT_LAST_LEAST          (-20)
#define KILN_FAULT_LAST_GREATEST       1320
#define KILN_FAULT_LAST_FAULT          "no reading"

/* label `advice` */
#define KILN_FAULT_ADVICE_X         120                      /* px */
#define KILN_FAULT_ADVICE_BASELINE  120                      /* px */
#define KILN_FAULT_ADVICE_ALIGNMENT KILN_CENTRED_ON_X
#define KILN_FAULT_ADVICE_INK       KILN_INK_GLOW
#define KILN_FAULT_ADVICE_GROUND    KILN_INK_SOOT
#define KILN_FAULT_ADVICE_TEXT      "Switch off at the wall"

/* ---- Functions --------------------------------------------------------------------------------------------- */

/* How pixels reach the glass. `window` sets a rectangle; the runs after it fill it exactly, row by row from its top
   left corner, each run being `count` pixels of one colour, which may go on into the next row. */
typedef struct kiln_port {
    void (*window)(void *context, uint16_t x, uint16_t y, uint16_t width, uint16_t height);
    void (*run)(void *context, uint16_t colour, uint32_t count);
    void *context;
} kiln_port;

/* What the screen `start` shows: UTF-8 texts (NULL is an empty one). */
typedef struct kiln_start_values {
    const char *message;
} kiln_start_values;

/* What the screen `readings` shows: UTF-8 texts (NULL is an empty one), and icons' states. */
typedef struct kiln_readings_values {
    uint8_t radio;         /* one of KILN_READINGS_RADIO_STATE_... */
    uint8_t server;        /* one of KILN_READINGS_SERVER_STATE_... */
    const char *chamber;
    const char *set_point;
    const char *phase;
    const char *left;
} kiln_readings_values;

/* What the screen `fault` shows: UTF-8 texts (NULL is an empty one). */
typedef struct kiln_fault_values {
    const char *reason;
    const char *last;
} kiln_fault_values;

#ifdef __cplusplus
extern "C" {
#endif

/* Draw a whole screen, or bring one field or icon up to date. Of a text longer than any that the field can show, the
   bytes beyond that length are not read. A state that an icon does not have paints nothing. */
void kiln_start_draw(const kiln_port *port, const kiln_start_values *values);
void kiln_start_message_update(const kiln_port *port, const char *text);
void kiln_readings_draw(const kiln_port *port, const kiln_readings_values *values);
void kiln_readings_radio_update(const kiln_port *port, uint8_t state);
void kiln_readings_server_update(const kiln_port *port, uint8_t state);
void kiln_readings_chamber_update(const kiln_port *port, const char *text);
void kiln_readings_set_point_update(const kiln_port *port, const char *text);
void kiln_readings_phase_update(const kiln_port *port, const char *text);
void kiln_readings_left_update(const kiln_port *port, const char *text);
void kiln_fault_draw(const kiln_port *port, const kiln_fault_values *values);
void kiln_fault_reason_update(const kiln_port *port, const char *text);
void kiln_fault_last_update(const kiln_port *port, const char *text);

#ifndef KILN_NO_CHANGES
/* The same, of a part that shows `former` already: only pixels that differ are sent, with a few others where that takes
   fewer bytes. Give the very text or state that was drawn last; NULL, or a state that there is none of, where that is
   not known, and all is drawn. */
void kiln_start_message_change(const kiln_port *port, const char *former, const char *text);
void kiln_readings_radio_change(const kiln_port *port, uint8_t former, uint8_t state);
void kiln_readings_server_change(const kiln_port *port, uint8_t former, uint8_t state);
void kiln_readings_chamber_change(const kiln_port *port, const char *former, const char *text);
void kiln_readings_set_point_change(const kiln_port *port, const char *former, const char *text);
void kiln_readings_phase_change(const kiln_port *port, const char *former, const char *text);
void kiln_readings_left_change(const kiln_port *port, const char *former, const char *text);
void kiln_fault_reason_change(const kiln_port *port, const char *former, const char *text);
void kiln_fault_last_change(const kiln_port *port, const char *former, const char *text);
#endif

#ifndef KILN_NO_TEXT_FUNCTIONS
/* Write the text of a field into a buffer of its ..._TEXT_BYTES and return its bytes, terminator not counted. A value
   outside what the proof covers, or not a number, gives the text named behind `else`. Where a field has none the
   result is -1 and the buffer is as it was: do not update the field then. */

/* choice: 0 to 5, one of KILN_START_MESSAGE_CHOICE_...; else -1, the buffer untouched */
int kiln_start_message_text(char *buffer, int choice);

/* value: -20 to 1320; else KILN_READINGS_CHAMBER_FAULT */
int kiln_readings_chamber_text(char *buffer, int value);

/* value: 0 to 1300 by 5; else KILN_READINGS_SET_POINT_FAULT */
int kiln_readings_set_point_text(char *buffer, unsigned int value);

/* choice: 0 to 7, one of KILN_READINGS_PHASE_CHOICE_...; else KILN_READINGS_PHASE_FAULT */
int kiln_readings_phase_text(char *buffer, int choice);

/* value_1: 0 to 47; value_2: 0 to 59; else KILN_READINGS_LEFT_FAULT */
int kiln_readings_left_text(char *buffer, unsigned int value_1, unsigned int value_2);

/* choice: 0 to 4, one of KILN_FAULT_REASON_CHOICE_...; else KILN_FAULT_REASON_FAULT */
int kiln_fault_reason_text(char *buffer, int choice);

/* value: -20 to 1320; else KILN_FAULT_LAST_FAULT */
int kiln_fault_last_text(char *buffer, int value);
#endif

#ifdef __cplusplus
}
#endif

#endif /* KILN_HEADER_ */

#if defined(KILN_IMPLEMENTATION) && !defined(KILN_IMPLEMENTED_)
#define KILN_IMPLEMENTED_

/* A place brought between two others; onto the panel. */
#define KILN_WITHIN_(at, least, greatest) ((at) < (least) ? (least) : (at) > (greatest) ? (greatest) : (at))
#define KILN_ACROSS_(at)                  (uint8_t)KILN_WITHIN_(at, 0, KILN_PANEL_WIDTH)
#define KILN_DOWN_(at)                    (uint8_t)KILN_WITHIN_(at, 0, KILN_PANEL_HEIGHT)

/* ---- Data -------------------------------------------------------------------------------------------------- */

#ifdef KILN_CONST
#define KILN_APART_ 1
#else
#define KILN_APART_          0
#define KILN_CONST           const
#define KILN_READ8(address)  (*(const uint8_t *)(address))
#define KILN_READ16(address) (*(const uint16_t *)(address))
#define KILN_READ32(address) (*(const uint32_t *)(address))
#endif

/* Bitmaps, row after row with nothing between, the first pixel in the lowest bits; 2585 bytes. */
static KILN_CONST uint8_t kiln_bits_[] = {
    /* reading U+002D -: 12 x 4 */
    0x15, 0x9F, 0x0D, 0x00,
    /* reading U+0030 0: 21 x 29 */
    0x0D, 0x15, 0xB6, 0xFD, 0xE0, 0x9C, 0x93, 0x40, 0xE5, 0x7F, 0x1A, 0x08, 0x73, 0xAF, 0x2D, 0x08,
    0x52, 0xCF, 0x1D, 0x1F, 0x10, 0xE1, 0x3F, 0x4B, 0x11, 0xE6, 0x3F, 0xD8, 0x10, 0xF8, 0xB3, 0x40,
    0xF4, 0x24, 0x0D, 0xE1, 0x3F, 0x03, 0xA5, 0x3F, 0xD7, 0x00, 0xF4, 0xC3, 0x60, 0xF3, 0xC3, 0x0D,
    0x80, 0x3F, 0x07, 0xE7, 0x3F, 0xD2, 0x00, 0xFB, 0x43, 0x70, 0xFB, 0x43, 0x0D, 0xE0, 0x3F, 0x02,
    0x97, 0x3F, 0xB7, 0x00, 0x4F, 0x80, 0xF7, 0x93, 0x1A, 0x4F, 0x80, 0xF6, 0x93, 0x2B, 0x3F, 0x0E,
    0x68, 0x3F, 0xBA, 0xF2, 0xE3, 0x80, 0xF5, 0xB3, 0x2B, 0x3F, 0x0E, 0x68, 0x3F, 0xAA, 0xF1, 0x04,
    0x68, 0x3F, 0xC9, 0x00, 0x4F, 0x01, 0x77, 0x3F, 0xD8, 0x00, 0xFD, 0x23, 0x70, 0xF9, 0x63, 0x0D,
    0xA0, 0x3F, 0x05, 0xB7, 0x3F, 0xD4, 0x00, 0xF8, 0x83, 0x70, 0xFE, 0x13, 0x0D, 0x30, 0x3F, 0x0C,
    0x46, 0x3F, 0xDC, 0x10, 0xFD, 0x43, 0x50, 0xFA, 0x63, 0x0F, 0x10, 0xF7, 0xC3, 0x01, 0x53, 0x3F,
    0x1E, 0x0F, 0x10, 0xD1, 0x3F, 0x4C, 0x21, 0xF7, 0x74, 0x07, 0x42, 0xCF, 0x8C, 0x30, 0xF6, 0xDA,
    0x91, 0x40, 0xD4, 0x7F, 0x1A, 0x0D, 0x15, 0xB6, 0xFD, 0xE0, 0x9C, 0x03,
    /* reading U+0031 1: 18 x 29 */
    0x08, 0x45, 0xFA, 0x43, 0x0A, 0x31, 0x95, 0xFD, 0x45, 0x07, 0x70, 0x9F, 0x04, 0x00, 0x07, 0x15,
    0x4F, 0x04, 0x00, 0x00, 0x00, 0x00, 0x00, 0x00, 0x00, 0x00, 0x50, 0xF9, 0x1F, 0x00, 0x00,
    /* reading U+0032 2: 21 x 29 */
    0x0E, 0x34, 0xC8, 0xFE, 0xE0, 0xAD, 0x16, 0x09, 0x22, 0xFB, 0xE8, 0x76, 0x10, 0xF6, 0x9C, 0x07,
    0x80, 0xEF, 0xF7, 0x31, 0x4F, 0x4B, 0x02, 0x20, 0xE7, 0x3F, 0x1E, 0x0E, 0x50, 0x2F, 0x06, 0x35,
    0xFE, 0x83, 0x0C, 0x51, 0x4E, 0x70, 0xF7, 0xC3, 0x09, 0x12, 0x80, 0xF3, 0x64, 0xD0, 0x4F, 0x71,
    0xC0, 0xF1, 0x14, 0x07, 0x4C, 0x3F, 0x7E, 0xC0, 0xF9, 0xA3, 0x08, 0x1B, 0xFE, 0x53, 0x07, 0x9B,
    0x3F, 0x7D, 0xA0, 0xF4, 0x64, 0x08, 0x29, 0xFE, 0xB3, 0x08, 0x18, 0xFC, 0x24, 0x07, 0xB8, 0x4F,
    0x76, 0x70, 0xF9, 0x94, 0x07, 0x96, 0x4F, 0x8B, 0x50, 0xF9, 0xD4, 0x81, 0x40, 0xF9, 0xD4, 0x82,
    0x30, 0xF9, 0xE4, 0x83, 0x20, 0xF9, 0xE4, 0x73, 0x10, 0xFA, 0x45, 0x0D, 0xA0, 0x5F, 0xBD, 0xED,
    0x7F, 0x68, 0xF4, 0x3F, 0x08, 0x00,
    /* reading U+0033 3: 21 x 29 */
    0x0D, 0x24, 0xB7, 0xED, 0xEE, 0x8B, 0x93, 0x20, 0xB3, 0x9F, 0x3C, 0x07, 0x81, 0xDF, 0x85, 0x00,
    0xFA, 0x0F, 0xF3, 0x03, 0x30, 0xFE, 0xC2, 0x26, 0x00, 0x42, 0xFC, 0xB4, 0x0E, 0x41, 0x0F, 0x6E,
    0x60, 0xFA, 0x14, 0x0B, 0x62, 0x03, 0x37, 0x4F, 0x64, 0xD0, 0x4F, 0x75, 0xC0, 0xF2, 0x34, 0x07,
    0x7C, 0x3F, 0x7E, 0xB0, 0xF6, 0x74, 0x0B, 0x16, 0x42, 0xC7, 0x4F, 0x7B, 0x50, 0xFA, 0x88, 0x08,
    0xA5, 0x6F, 0x2A, 0x08, 0xA5, 0x7F, 0x3A, 0x07, 0xA5, 0x9F, 0xC8, 0x60, 0x11, 0x53, 0xE9, 0x4F,
    0x8A, 0xB0, 0x91, 0x4F, 0x76, 0xD0, 0xFA, 0xD3, 0x07, 0x3D, 0x4F, 0x72, 0xD0, 0xF1, 0x44, 0x0A,
    0x11, 0xA0, 0xF2, 0x34, 0x0C, 0x10, 0x7D, 0x90, 0xF6, 0x24, 0x0F, 0x00, 0xFA, 0xA1, 0x02, 0x36,
    0xFE, 0xC3, 0x1F, 0xF6, 0xE3, 0x49, 0x02, 0x10, 0x94, 0x5F, 0x65, 0xF7, 0x1F, 0x8A, 0x00, 0xE5,
    0xDF, 0x9A, 0x10, 0x91, 0xAF, 0x5D, 0x0E, 0x13, 0xA6, 0xEC, 0x1F, 0xCE, 0x48,
    /* reading U+0034 4: 23 x 29 */
    0x08, 0x1A, 0xFD, 0xB4, 0x07, 0x9A, 0x5F, 0x7B, 0x90, 0xF4, 0xB6, 0x08, 0x18, 0xFD, 0xB6, 0x07,
    0xA8, 0x7F, 0xAB, 0x70, 0xF5, 0x83, 0x3F, 0xCB, 0x60, 0xE1, 0x2F, 0x2D, 0x3F, 0xBB, 0x60, 0xFA,
    0x63, 0xF3, 0xB3, 0x0D, 0x65, 0x3F, 0x0C, 0x30, 0x3F, 0xEB, 0x40, 0xE2, 0x3F, 0x03, 0x40, 0x3F,
    0xDB, 0x40, 0xFB, 0x83, 0x10, 0xF4, 0xB3, 0x0D, 0x63, 0x3F, 0x0C, 0x42, 0x3F, 0xEB, 0x20, 0xE2,
    0x3F, 0x03, 0x42, 0x3F, 0xDB, 0x20, 0xFC, 0x73, 0x30, 0xF4, 0xB3, 0x0D, 0x71, 0x3F, 0x0C, 0x44,
    0x3F, 0xEB, 0x00, 0xF3, 0xE3, 0x02, 0x44, 0x3F, 0xDB, 0x00, 0xFC, 0x63, 0x50, 0xF4, 0xB3, 0x36,
    0xFF, 0x65, 0x00, 0x70, 0xC0, 0xF4, 0xB3, 0x00, 0x00, 0x00, 0x00,
    /* reading U+0035 5: 21 x 29 */
    0x06, 0xB2, 0xEF, 0x06, 0xC2, 0xEF, 0x60, 0x20, 0xFD, 0x7E, 0x20, 0xFE, 0xD2, 0x06, 0xF2, 0xC3,
    0x07, 0x11, 0x3F, 0x7B, 0x10, 0xF2, 0x93, 0x07, 0x31, 0x3F, 0x78, 0x10, 0xF4, 0x73, 0x1F, 0x10,
    0xF5, 0x73, 0xC7, 0xFE, 0xE0, 0x8B, 0x82, 0x10, 0xF6, 0x9C, 0x81, 0x10, 0xF7, 0xDD, 0x71, 0x10,
    0xF8, 0xCE, 0x3F, 0x10, 0xB2, 0x1F, 0x5C, 0x01, 0x10, 0xA4, 0x5F, 0xB5, 0x30, 0x55, 0x60, 0xF6,
    0xC4, 0x07, 0xAD, 0x4F, 0x71, 0xD0, 0xF3, 0x44, 0x06, 0xFE, 0x54, 0x70, 0xD0, 0xF1, 0x44, 0x07,
    0x4D, 0x4F, 0xC2, 0x00, 0xC1, 0x05, 0xB9, 0x3F, 0xEC, 0x00, 0xFA, 0x91, 0x01, 0x86, 0x4F, 0xF6,
    0x51, 0x3F, 0x8E, 0x13, 0x00, 0x51, 0xFC, 0xC4, 0x87, 0xFF, 0xE0, 0x92, 0x00, 0xE5, 0xCF, 0x3D,
    0x0A, 0x11, 0xE8, 0x9F, 0x19, 0x0E, 0x13, 0xA6, 0xEC, 0x1F, 0xBD, 0x27,
    /* reading U+0036 6: 20 x 29 */
    0x0D, 0x36, 0xC8, 0xFD, 0xE0, 0x9C, 0x94, 0x40, 0xB2, 0x8F, 0x5D, 0x07, 0x53, 0xCF, 0x89, 0x20,
    0xF5, 0xDD, 0xF1, 0x03, 0x31, 0xFE, 0xE3, 0x27, 0x11, 0xA4, 0x1F, 0x2E, 0x0D, 0xB1, 0x3F, 0x1C,
    0x50, 0xE5, 0xB3, 0x00, 0xF4, 0xE3, 0x01, 0x17, 0x07, 0xA0, 0x3F, 0x56, 0xF1, 0xE3, 0x55, 0x3F,
    0x59, 0xF8, 0x53, 0x1F, 0xFB, 0x33, 0x10, 0xA4, 0xFD, 0xE0, 0x8C, 0xA2, 0xFC, 0x13, 0xB2, 0x7F,
    0x99, 0xFE, 0x33, 0xFE, 0xB9, 0xE8, 0x3F, 0xFE, 0x8B, 0x1F, 0xFE, 0xC5, 0x26, 0x00, 0x62, 0xFE,
    0xE3, 0xC1, 0xFD, 0x84, 0x50, 0xE2, 0x3F, 0xB6, 0xFD, 0x93, 0x70, 0xF7, 0xA3, 0xBB, 0x3F, 0x02,
    0x37, 0x3F, 0xBB, 0xF8, 0x53, 0x70, 0xF2, 0xC3, 0x5B, 0x3F, 0x08, 0x27, 0x3F, 0xBC, 0xF1, 0xD3,
    0x70, 0xF4, 0xA3, 0x0D, 0xA0, 0x3F, 0x05, 0x96, 0x3F, 0xE7, 0x00, 0xF4, 0xE3, 0x03, 0x44, 0x4F,
    0xF2, 0x01, 0xA1, 0x3F, 0x7E, 0x02, 0x20, 0xF7, 0x94, 0x09, 0x11, 0xFD, 0xDC, 0x91, 0x20, 0xD2,
    0xAF, 0x2D, 0x09, 0x13, 0xF9, 0xA8, 0xD1, 0x50, 0x72, 0xDB, 0x0F, 0xCE, 0x38,
    /* reading U+0037 7: 20 x 29 */
    0xF5, 0x3F, 0x0A, 0x50, 0xFF, 0x43, 0x07, 0x7C, 0x3F, 0x78, 0xB0, 0xF2, 0xC3, 0x08, 0xCB, 0x2F,
    0x2E, 0x07, 0x6A, 0x3F, 0x87, 0x90, 0xE1, 0x2F, 0x7C, 0x90, 0xF8, 0x43, 0x07, 0x18, 0x3F, 0x7C,
    0x80, 0xF8, 0x53, 0x08, 0x17, 0xFE, 0xD2, 0x07, 0x67, 0x3F, 0x78, 0x70, 0xFB, 0x23, 0x07, 0x26,
    0x3F, 0x7D, 0x60, 0xF6, 0x93, 0x07, 0xA6, 0x3F, 0x75, 0x60, 0xFE, 0x23, 0x06, 0x25, 0x4F, 0x07,
    0x55, 0x3F, 0x7C, 0x50, 0xF8, 0xA3, 0x07, 0xA5, 0x3F, 0x79, 0x50, 0xFC, 0x73, 0x07, 0xE5, 0x3F,
    0x66, 0x50, 0x4F, 0x75, 0x40, 0xF1, 0x44, 0x07, 0x24, 0x4F, 0x73, 0x40, 0xF3, 0x24,
    /* reading U+0038 8: 21 x 29 */
    0x0E, 0x25, 0xB7, 0xFD, 0xE0, 0xBD, 0x17, 0x08, 0x13, 0xF9, 0x79, 0x08, 0x12, 0xFC, 0xAB, 0x07,
    0xB2, 0xDF, 0xF7, 0x01, 0x51, 0x4F, 0x39, 0x11, 0xA4, 0x3F, 0x1E, 0x0D, 0xA1, 0x3F, 0x06, 0x85,
    0x3F, 0xD5, 0x10, 0xFC, 0xE2, 0x70, 0xFE, 0x72, 0x0D, 0xD1, 0x2F, 0x0E, 0xD7, 0x2F, 0xD8, 0x10,
    0xFB, 0x33, 0x60, 0xFE, 0x62, 0x0F, 0x10, 0xF6, 0xE3, 0x03, 0x64, 0x2F, 0x1E, 0x1F, 0x10, 0xD1,
    0x4F, 0x3A, 0x10, 0xE3, 0x2F, 0xD8, 0x20, 0xE2, 0x5F, 0x9D, 0xFE, 0xB2, 0x09, 0x23, 0xFD, 0xB9,
    0x91, 0x40, 0xE2, 0x7F, 0x1D, 0x09, 0x53, 0xFE, 0xD9, 0xC3, 0x20, 0xF7, 0xB3, 0xFD, 0xE6, 0xF4,
    0x00, 0x71, 0x3F, 0x08, 0x41, 0xFA, 0xE5, 0xE3, 0x00, 0xF3, 0xA3, 0x40, 0x91, 0x4F, 0xEC, 0x00,
    0xFA, 0xE2, 0x01, 0x66, 0x4F, 0xD4, 0x00, 0xFE, 0xA2, 0x80, 0xF9, 0x83, 0x1B, 0x3F, 0x08, 0x58,
    0x3F, 0xBA, 0xF1, 0xA3, 0x80, 0xF5, 0xA3, 0x0E, 0xE0, 0x2F, 0x1E, 0x70, 0xF8, 0x83, 0x0F, 0x00,
    0xFA, 0xB3, 0x01, 0x35, 0xFE, 0x43, 0x2F, 0x00, 0xF3, 0xD4, 0x27, 0x00, 0x31, 0xF8, 0xC4, 0x08,
    0x81, 0xEF, 0x3E, 0x08, 0x82, 0xCF, 0x4E, 0x09, 0x43, 0xFD, 0xA9, 0xE2, 0x50, 0x84, 0xEC, 0x0F,
    0xDE, 0x7B, 0x02,
    /* reading U+0039 9: 21 x 29 */
    0x0C, 0x14, 0xA6, 0xED, 0xDE, 0x59, 0x09, 0x53, 0xFE, 0xD7, 0x74, 0x20, 0xF8, 0x7B, 0x07, 0x71,
    0xDF, 0xF7, 0x01, 0x20, 0xFE, 0xC3, 0x14, 0x41, 0xFB, 0x34, 0x0D, 0x90, 0x3F, 0x0B, 0x95, 0x3F,
    0xDB, 0x00, 0xFD, 0x23, 0x60, 0xFC, 0x33, 0x2B, 0x3F, 0x0B, 0x57, 0x3F, 0xB9, 0xF3, 0x93, 0x70,
    0xF1, 0xD3, 0x4B, 0x3F, 0x09, 0xB8, 0x3F, 0xB1, 0xF3, 0xB3, 0x80, 0xF9, 0x43, 0x1D, 0x3F, 0x1E,
    0x60, 0xE2, 0x3F, 0xE5, 0x00, 0xFD, 0x93, 0x50, 0xD3, 0x4F, 0xF6, 0x00, 0x70, 0x4F, 0x4A, 0x11,
    0x93, 0x6F, 0xB7, 0x00, 0xE1, 0xBF, 0xFE, 0x73, 0x0B, 0x41, 0xAF, 0x7A, 0x3F, 0xE6, 0x20, 0xD3,
    0x7F, 0x07, 0x80, 0x3F, 0xF5, 0x02, 0x54, 0xDA, 0xEE, 0x8C, 0x02, 0xA1, 0x3F, 0x73, 0xE0, 0xFC,
    0x13, 0x07, 0x1D, 0x3F, 0x7C, 0xD0, 0xF6, 0x83, 0x07, 0xCD, 0x3F, 0x73, 0xC0, 0xF6, 0xC3, 0x0C,
    0x92, 0x1B, 0x50, 0xF5, 0x44, 0x2F, 0x10, 0xF8, 0xE1, 0x27, 0x00, 0x41, 0xFA, 0xA4, 0x08, 0x70,
    0xDF, 0x1C, 0x09, 0x30, 0xFE, 0xBB, 0x91, 0x10, 0x91, 0x8F, 0x7E, 0x0D, 0x23, 0xB7, 0xED, 0xDE,
    0x6A, 0x01,
    /* reading U+0062 b: 21 x 33 */
    0xA5, 0x3F, 0x0A, 0x00, 0x00, 0x00, 0x00, 0xA5, 0x3F, 0xF9, 0xA0, 0x3F, 0x09, 0x31, 0xC8, 0xEE,
    0xAD, 0xB5, 0xFA, 0x83, 0xA2, 0x7F, 0x3C, 0xAA, 0x3F, 0xEC, 0x9F, 0x4E, 0xA7, 0xFF, 0xE1, 0xF1,
    0xA0, 0x5F, 0x8E, 0x03, 0x10, 0xD5, 0x4F, 0xDA, 0xFA, 0xC4, 0x02, 0x14, 0xFD, 0x14, 0xAC, 0x3F,
    0x1C, 0x60, 0xF4, 0x64, 0xAB, 0x3F, 0x0A, 0xE8, 0x3F, 0xBA, 0xFA, 0xA3, 0x80, 0xFB, 0xC3, 0xAB,
    0x3F, 0x0A, 0x98, 0x3F, 0xBD, 0xFA, 0xA3, 0x80, 0xF8, 0xE3, 0xB0, 0xFA, 0xA3, 0x80, 0xFA, 0xC3,
    0xAB, 0x3F, 0x0A, 0xC8, 0x3F, 0xBA, 0xFA, 0xA3, 0x70, 0xF2, 0x64, 0xAC, 0x3F, 0x1D, 0x60, 0xF9,
    0x24, 0xAC, 0x4F, 0x1B, 0x40, 0xF6, 0xA4, 0xAD, 0x5F, 0x6D, 0x11, 0x93, 0x5F, 0x62, 0xFA, 0x1F,
    0x96, 0xFA, 0xE2, 0xF8, 0x7A, 0xAD, 0x2F, 0x0A, 0x50, 0xFD, 0xD6, 0xC5, 0x60, 0x61, 0xEB, 0x0F,
    0xAD, 0x06,
    /* reading U+0065 e: 21 x 22 */
    0x0D, 0x46, 0xC8, 0xFE, 0xE0, 0x8C, 0x93, 0x40, 0xB3, 0x8F, 0x1A, 0x08, 0x63, 0xBF, 0x2D, 0x07,
    0x62, 0xDF, 0xFC, 0x02, 0x31, 0x4F, 0x4A, 0x01, 0x10, 0xC5, 0x3F, 0xD7, 0x10, 0xFB, 0x53, 0x60,
    0xFB, 0xD2, 0x0D, 0x40, 0x3F, 0x08, 0x37, 0x3F, 0xC3, 0x00, 0xF9, 0x23, 0x80, 0x3F, 0x86, 0x00,
    0xFD, 0x2F, 0x78, 0x00, 0xFF, 0x93, 0x16, 0xFF, 0x93, 0x16, 0xFF, 0x73, 0x06, 0xF0, 0x24, 0x07,
    0xD0, 0x3F, 0x75, 0x00, 0xF9, 0xB3, 0x07, 0x40, 0x4F, 0xB5, 0x10, 0xFC, 0x54, 0x70, 0x16, 0x3F,
    0x10, 0xF4, 0xA5, 0x15, 0x00, 0x31, 0xD7, 0x0F, 0x79, 0x20, 0xF6, 0x2E, 0x07, 0x63, 0xDF, 0x98,
    0x40, 0xB3, 0x9F, 0x5C, 0x0D, 0x36, 0xB7, 0xED, 0xDE, 0x7B, 0x03,
    /* reading U+006E n: 20 x 23 */
    0x0C, 0x58, 0xEA, 0x0F, 0xCE, 0x18, 0xAD, 0x2F, 0x0C, 0x21, 0xFB, 0xE6, 0xD4, 0xFA, 0xE2, 0x00,
    0xE4, 0x8F, 0x2E, 0xA9, 0x3F, 0xE5, 0xAF, 0xF9, 0xA0, 0x6F, 0x4C, 0x00, 0x61, 0xFE, 0xE3, 0xB1,
    0xFA, 0xB5, 0x40, 0xF5, 0x44, 0xAB, 0x4F, 0x0C, 0xE6, 0x3F, 0xC7, 0xFA, 0xE3, 0x01, 0xB6, 0x3F,
    0xB8, 0xFA, 0xA3, 0x70, 0xFA, 0x93, 0x00, 0x00, 0x00, 0x00, 0x00, 0x00, 0x00,
    /* reading U+006F o: 23 x 22 */
    0x0D, 0x36, 0xC8, 0xFD, 0xE0, 0x9C, 0x94, 0x40, 0xB3, 0x8F, 0x5C, 0x07, 0x63, 0xCF, 0x78, 0x20,
    0xF6, 0x9E, 0x2F, 0x10, 0xF3, 0xE4, 0x27, 0x00, 0x61, 0xFD, 0x64, 0x1F, 0x10, 0xFB, 0xE3, 0x03,
    0x14, 0xFC, 0xE3, 0xD1, 0x00, 0xF4, 0x54, 0x60, 0xF2, 0x74, 0x0D, 0x90, 0x3F, 0x0D, 0xA8, 0x3F,
    0xDC, 0x00, 0xFD, 0x93, 0x80, 0xF5, 0x24, 0x0C, 0xF0, 0x64, 0x80, 0xF3, 0x44, 0x1B, 0x4F, 0x05,
    0x18, 0x4F, 0x05, 0x0C, 0xF0, 0x64, 0x80, 0xF3, 0x44, 0x0D, 0xD0, 0x3F, 0x09, 0x58, 0x4F, 0xD2,
    0x00, 0xF9, 0xD3, 0x80, 0xFA, 0xD3, 0x0D, 0x40, 0x4F, 0x05, 0x26, 0x4F, 0xF8, 0x01, 0xC1, 0x3F,
    0x2E, 0x40, 0xC1, 0x3F, 0x1E, 0x2F, 0x10, 0xF4, 0xE4, 0x27, 0x00, 0x51, 0xFD, 0x74, 0x07, 0x62,
    0xEF, 0x7A, 0x30, 0xF6, 0x9C, 0x09, 0x34, 0xFB, 0xD8, 0xD5, 0x60, 0x84, 0xEC, 0x0F, 0xCE, 0x59,
    /* reading U+0070 p: 21 x 31 */
    0x0B, 0x37, 0xC8, 0xEE, 0xAD, 0xD5, 0xFA, 0xD2, 0x00, 0xA2, 0x7F, 0x3C, 0xAA, 0x3F, 0xE7, 0x9F,
    0x4E, 0xA7, 0xFF, 0xE1, 0xE1, 0xFA, 0x86, 0x03, 0x10, 0xD5, 0x4F, 0xD9, 0xFA, 0xD4, 0x03, 0x14,
    0xFD, 0x14, 0xAC, 0x3F, 0x1D, 0x60, 0xF4, 0x64, 0xAB, 0x3F, 0x0A, 0xE8, 0x3F, 0xB9, 0xFA, 0xA3,
    0x80, 0xFB, 0xC3, 0xAB, 0x3F, 0x0A, 0x98, 0x3F, 0xBD, 0xFA, 0xA3, 0x80, 0xF8, 0xE3, 0xB0, 0xFA,
    0xA3, 0x80, 0xFA, 0xC3, 0xAB, 0x3F, 0x0A, 0xC8, 0x3F, 0xBA, 0xFA, 0xA3, 0x70, 0xF2, 0x64, 0xAB,
    0x3F, 0x0A, 0x97, 0x4F, 0xB2, 0xFA, 0x84, 0x50, 0xF6, 0xA4, 0xAE, 0x5F, 0x5C, 0x01, 0x30, 0xF9,
    0x35, 0xA6, 0xFF, 0x61, 0xA8, 0x3F, 0xFE, 0x7A, 0xAB, 0x3F, 0x68, 0xFE, 0xD6, 0xF5, 0xA1, 0x3F,
    0x09, 0x10, 0xB7, 0xFE, 0xD0, 0x6A, 0xA5, 0x3F, 0x59, 0xFA, 0xA3, 0x00, 0x00, 0x00, 0x00,
    /* reading U+0072 r: 15 x 23 */
    0x0B, 0x17, 0xD8, 0x0F, 0xBE, 0xC2, 0xFA, 0xC2, 0x10, 0xD3, 0x4F, 0xC1, 0xFA, 0xD2, 0x00, 0xE3,
    0x4F, 0xAD, 0xFA, 0xE2, 0xD1, 0x5F, 0x8A, 0xFA, 0x93, 0x6F, 0xA7, 0xFA, 0xB6, 0x14, 0x31, 0x52,
    0xFA, 0x65, 0xA5, 0x4F, 0x57, 0xFA, 0xD3, 0xA5, 0x3F, 0x0A, 0x00, 0x00, 0x00, 0x00, 0x00, 0x00,
    /* heading U+0043 C: 12 x 16 */
    0xD0, 0x07, 0xE0, 0x83, 0xFF, 0x3C, 0xE6, 0x00, 0x07, 0xE0, 0x00, 0x0E, 0xC4, 0xE1, 0xF8, 0x0F,
    0x3F,
    /* heading U+0046 F: 9 x 16 */
    0x7A, 0xFD, 0xFF, 0x0F, 0xFC, 0x3B, 0x00,
    /* heading U+004B K: 12 x 16 */
    0x84, 0x50, 0x07, 0x7F, 0x38, 0xC7, 0x71, 0x0E, 0x77, 0xF0, 0x07, 0xFF, 0xF0, 0x1C, 0xC7, 0x71,
    0x38, 0x07, 0x77, 0xE0,
    /* heading U+0061 a: 10 x 12 */
    0x00, 0x01, 0xF8, 0xF8, 0x67, 0x1C, 0xE0, 0xF0, 0xF3, 0xEF, 0xF9, 0xE1, 0xC7, 0xFB, 0xCF, 0x3B,
    /* heading U+0069 i: 4 x 17 */
    0xD0, 0xFF, 0x01, 0xFE, 0x06, 0x0E,
    /* heading U+006C l: 4 x 17 */
    0xFE, 0x7F, 0x00, 0xF7, 0x0E,
    /* heading U+006E n: 10 x 12 */
    0xF0, 0x0F, 0xF3, 0xFC, 0xF7, 0xFC, 0xE1,
    /* heading U+0074 t: 8 x 15 */
    0xD4, 0x1F, 0x18, 0x1C, 0xFF, 0x1C, 0xF8, 0xF0,
    /* heading U+0075 u: 10 x 12 */
    0xFE, 0x00, 0x83, 0x0F, 0x7F, 0xFC, 0xFF, 0x9E, 0x03,
    /* heading U+00B0: 6 x 7 */
    0x00, 0x9C, 0x3F, 0x8F, 0xF3, 0xCF, 0x01,
    /* text U+002D -: 4 x 1 */
    0x00, 0x0F,
    /* text U+0030 0: 7 x 11 */
    0xF0, 0x00, 0x1C, 0xD1, 0x38, 0x38, 0x16, 0x71, 0x00,
    /* text U+0031 1: 7 x 11 */
    0xF8, 0x03, 0x18, 0x0F, 0xE6, 0x0F,
    /* text U+0032 2: 7 x 11 */
    0x00, 0x00, 0x9E, 0x18, 0x08, 0x0C, 0x82, 0x61, 0x18, 0x86, 0xC1, 0x1F,
    /* text U+0033 3: 8 x 11 */
    0x08, 0x01, 0x3C, 0x46, 0xC0, 0x60, 0x38, 0x40, 0xC0, 0xC2, 0x3D,
    /* text U+0034 4: 8 x 11 */
    0x00, 0x06, 0x60, 0x70, 0x58, 0x68, 0x6C, 0x66, 0x62, 0xFF, 0x60,
    /* text U+0035 5: 8 x 11 */
    0x0C, 0x00, 0xFC, 0x04, 0x7E, 0xC4, 0xC0, 0x80, 0xC0, 0x42, 0x3D,
    /* text U+0036 6: 7 x 11 */
    0x80, 0x00, 0x3C, 0xE3, 0x20, 0xD0, 0x1B, 0x07, 0x87, 0x62, 0x1E,
    /* text U+0037 7: 7 x 11 */
    0xA0, 0x06, 0x7F, 0x30, 0x08, 0x82, 0x41, 0x30, 0x00,
    /* text U+0038 8: 7 x 11 */
    0x00, 0x01, 0x3C, 0xD1, 0x70, 0xEC, 0xF2, 0x8C, 0x83, 0x63, 0x1F,
    /* text U+0039 9: 7 x 11 */
    0x00, 0x00, 0x9E, 0x51, 0x38, 0x38, 0xF6, 0x02, 0xC1, 0xA0, 0x98, 0x07,
    /* text U+003F ?: 6 x 12 */
    0x88, 0x02, 0x5E, 0x0C, 0x63, 0x08, 0x01, 0x30, 0x0E,
    /* text U+0041 A: 10 x 12 */
    0x12, 0x00, 0x30, 0xA0, 0x81, 0x04, 0x33, 0xC4, 0xF0, 0x63, 0x98, 0x60, 0x02, 0x0D, 0x0C,
    /* text U+0043 C: 9 x 12 */
    0x50, 0x01, 0x78, 0x08, 0x09, 0x18, 0x10, 0x60, 0x80, 0x00, 0xC3, 0x78, 0x00,
    /* text U+0048 H: 8 x 12 */
    0x9E, 0x0F, 0x81, 0xFF, 0x81,
    /* text U+004A J: 6 x 12 */
    0xFE, 0x01, 0x20, 0x1C, 0x7B,
    /* text U+004B K: 8 x 12 */
    0x00, 0x00, 0xC1, 0x61, 0x31, 0x19, 0x0D, 0x1D, 0x17, 0x33, 0x21, 0x61, 0x41, 0xC1,
    /* text U+004E N: 8 x 12 */
    0x00, 0x08, 0x81, 0x83, 0x87, 0x85, 0x8D, 0x89, 0x99, 0x91, 0xB1, 0xA1, 0xC1,
    /* text U+0052 R: 8 x 12 */
    0x18, 0x00, 0x3F, 0x61, 0x41, 0x61, 0x3F, 0x11, 0x31, 0x21, 0x61, 0xC1,
    /* text U+0053 S: 8 x 12 */
    0x08, 0x03, 0x7C, 0xC2, 0x03, 0x06, 0x1C, 0x70, 0xC0, 0x43, 0x3E,
    /* text U+0054 T: 9 x 12 */
    0xFC, 0x0F, 0xFF, 0x61, 0x00,
    /* text U+0061 a: 7 x 9 */
    0x00, 0x00, 0xBE, 0x11, 0x18, 0x6F, 0x1E, 0x87, 0xE7, 0x4E,
    /* text U+0062 b: 8 x 13 */
    0x0E, 0x05, 0x03, 0x3B, 0x47, 0xC3, 0x83, 0xC3, 0x67, 0x3B,
    /* text U+0063 c: 7 x 9 */
    0x30, 0x00, 0x3C, 0xF3, 0x20, 0x30, 0x30, 0xF1, 0x01,
    /* text U+0064 d: 8 x 13 */
    0x0E, 0x03, 0xC0, 0xDC, 0xE6, 0xC3, 0xC1, 0xC3, 0xE2, 0xDC,
    /* text U+0065 e: 7 x 9 */
    0x00, 0x00, 0x3C, 0xF1, 0x30, 0xF8, 0x0F, 0x0C, 0x4C, 0x7C,
    /* text U+0066 f: 5 x 13 */
    0xCC, 0x1F, 0x5C, 0x3C, 0x01,
    /* text U+0067 g: 8 x 13 */
    0x88, 0x04, 0xFC, 0x22, 0x63, 0x22, 0x1E, 0x03, 0x7E, 0xC1, 0x43, 0x3E,
    /* text U+0068 h: 7 x 13 */
    0x8E, 0x1F, 0x83, 0xDD, 0x71, 0x08,
    /* text U+0069 i: 2 x 13 */
    0xEA, 0x1F, 0x33,
    /* text U+006B k: 8 x 13 */
    0x0E, 0x00, 0x03, 0x63, 0x23, 0x13, 0x1B, 0x1F, 0x37, 0x23, 0x63, 0xC3,
    /* text U+006C l: 3 x 13 */
    0xFE, 0x0F, 0x33,
    /* text U+006D m: 13 x 9 */
    0xF0, 0x01, 0x3B, 0xEF, 0x1C, 0x0D, 0xA1, 0x21, 0x0C,
    /* text U+006E n: 7 x 9 */
    0xF8, 0x01, 0xBB, 0xE3, 0x10,
    /* text U+006F o: 8 x 9 */
    0x30, 0x00, 0x3C, 0x62, 0xC3, 0xC1, 0xC3, 0x62, 0x3C,
    /* text U+0070 p: 8 x 13 */
    0x50, 0x1C, 0x3B, 0x47, 0xC3, 0x83, 0xC3, 0x67, 0x3B, 0x03,
    /* text U+0072 r: 5 x 9 */
    0xF8, 0x01, 0xFB, 0x0C,
    /* text U+0073 s: 7 x 9 */
    0x00, 0x00, 0x3C, 0xB3, 0xC0, 0x80, 0x03, 0x03, 0xC5, 0x3F,
    /* text U+0074 t: 6 x 12 */
    0xE6, 0x07, 0xC4, 0x4F, 0xE0,
    /* text U+0075 u: 7 x 9 */
    0x7E, 0x00, 0x43, 0xB1, 0x17,
    /* text U+0076 v: 8 x 9 */
    0x48, 0x00, 0x83, 0xC2, 0x46, 0x64, 0x2C, 0x38, 0x18,
    /* text U+0077 w: 12 x 9 */
    0x08, 0x00, 0x43, 0x28, 0x8E, 0xA6, 0x4C, 0x4A, 0x94, 0xC5, 0x51, 0x1C, 0x87, 0x31,
    /* text U+0079 y: 8 x 13 */
    0x00, 0x00, 0x83, 0xC2, 0x46, 0x44, 0x64, 0x2C, 0x28, 0x38, 0x18, 0x10, 0x18, 0x08, 0x06,
    /* text U+00B0: 4 x 4 */
    0x04, 0x9F, 0x0F,
    /* icon readings radio off: 14 x 14 */
    0xFA, 0x17, 0x00, 0x00, 0x30, 0x00, 0x3F, 0x00, 0x00,
    /* icon readings radio trying-1: 14 x 14 */
    0xF4, 0x17, 0x00, 0x00, 0xFC, 0x00, 0x0C, 0xC0, 0x0F, 0x00, 0x00,
    /* icon readings radio trying-2: 14 x 14 */
    0xE0, 0x17, 0xF0, 0x03, 0x03, 0x23, 0x3F, 0x21, 0x10, 0xC0, 0x00, 0xFC, 0x00, 0x00, 0x00,
    /* icon readings radio up: 14 x 14 */
    0x10, 0x16, 0x0C, 0x8C, 0x00, 0x94, 0x61, 0x16, 0xA3, 0xD9, 0xA6, 0x30, 0xC4, 0xCC, 0x00, 0x03,
    0xF0, 0x03, 0x00, 0x00,
    /* icon readings radio fault: 14 x 14 */
    0x00, 0x00, 0x03, 0xF0, 0x01, 0xEE, 0xCC, 0x71, 0x3B, 0xF8, 0x07, 0xFC, 0x00, 0x1E, 0xC0, 0x0F,
    0xF8, 0x07, 0xB7, 0xE3, 0xCC, 0xDD, 0xEF, 0xF3, 0x33, 0x00, 0x00,
    /* icon readings server off: 14 x 14 */
    0x00, 0x38, 0x00, 0x80, 0xCD, 0x26, 0x00, 0x01, 0x00, 0x36, 0x1B, 0x00, 0x60, 0xB3, 0x09, 0x40,
    0x00, 0x80, 0xCD, 0x06, 0x00, 0x00,
    /* icon readings server trying-1: 14 x 14 */
    0x08, 0x11, 0x00, 0x80, 0xFF, 0xE7, 0x01, 0xF9, 0x7F, 0x00, 0x80, 0xFF, 0x27, 0x00, 0xF9, 0x7F,
    0xC0, 0x80, 0x37, 0x00, 0x00, 0x00,
    /* icon readings server trying-2: 14 x 14 */
    0x08, 0x11, 0x00, 0x80, 0xFF, 0x27, 0x00, 0xF9, 0x7F, 0x00, 0x80, 0xFF, 0x27, 0xE0, 0xF9, 0x7F,
    0xC0, 0x00, 0xB0, 0x07, 0x00, 0x00,
    /* icon readings server up: 14 x 14 */
    0x04, 0x02, 0x00, 0x80, 0xFF, 0x67, 0xFE, 0xF9, 0x7F, 0xC0, 0x80, 0xFF, 0x67, 0xFE, 0xF9, 0x7F,
    0xC0, 0x80, 0xB7, 0xE7, 0xFF, 0x01, 0x00,
    /* icon readings server fault: 14 x 14 */
    0x00, 0x00, 0x03, 0xB0, 0xFF, 0xC5, 0xC0, 0x70, 0x38, 0xFE, 0x1F, 0x78, 0xE0, 0xED, 0xC9, 0x4F,
    0x3A, 0x97, 0x87, 0xC7, 0xC0, 0x18, 0x63, 0xC3, 0x30, 0x00, 0x00,
};

/* Of each glyph, the bytes of its character as one number; of an icon's state, its number from 1. */
static KILN_CONST uint16_t kiln_codes_[] = {
    0x20, 0x2D, 0x30, 0x31, 0x32, 0x33, 0x34, 0x35, 0x36, 0x37, 0x38, 0x39, 0x62, 0x65, 0x6E, 0x6F,
    0x70, 0x72,
    0x43, 0x46, 0x4B, 0x61, 0x69, 0x6C, 0x6E, 0x74, 0x75, 0xC2B0,
    0x20, 0x2D, 0x30, 0x31, 0x32, 0x33, 0x34, 0x35, 0x36, 0x37, 0x38, 0x39, 0x3F, 0x41, 0x43, 0x48,
    0x4A, 0x4B, 0x4E, 0x52, 0x53, 0x54, 0x61, 0x62, 0x63, 0x64, 0x65, 0x66, 0x67, 0x68, 0x69, 0x6B,
    0x6C, 0x6D, 0x6E, 0x6F, 0x70, 0x72, 0x73, 0x74, 0x75, 0x76, 0x77, 0x79, 0xC2B0,
    0x01, 0x02, 0x03, 0x04, 0x05,
    0x01, 0x02, 0x03, 0x04, 0x05,
};

/* the label `title` */
static KILN_CONST char kiln_text_start_title_[] = KILN_START_TITLE_TEXT;

/* the label `caution` */
static KILN_CONST char kiln_text_start_caution_[] = KILN_START_CAUTION_TEXT;

/* the label `title` */
static KILN_CONST char kiln_text_readings_title_[] = KILN_READINGS_TITLE_TEXT;

/* the label `unit` */
static KILN_CONST char kiln_text_readings_unit_[] = KILN_READINGS_UNIT_TEXT;

/* the label `set-word` */
static KILN_CONST char kiln_text_readings_set_word_[] = KILN_READINGS_SET_WORD_TEXT;

/* the label `title` */
static KILN_CONST char kiln_text_fault_title_[] = KILN_FAULT_TITLE_TEXT;

/* the label `advice` */
static KILN_CONST char kiln_text_fault_advice_[] = KILN_FAULT_ADVICE_TEXT;

/* Inks of the states of the icon `radio`. */
static KILN_CONST uint16_t kiln_inks_readings_radio_[] = {
    KILN_INK_ASH, KILN_READINGS_RADIO_INK, KILN_READINGS_RADIO_INK, KILN_INK_LEAF, KILN_INK_ALARM,
};

/* Inks of the states of the icon `server`. */
static KILN_CONST uint16_t kiln_inks_readings_server_[] = {
    KILN_INK_ASH, KILN_READINGS_SERVER_INK, KILN_READINGS_SERVER_INK, KILN_INK_LEAF, KILN_INK_ALARM,
};

/* A glyph, in pixels. */
typedef struct kiln_glyph_ {
    uint16_t first_byte;
    uint8_t left;        /* columns between the pen and the first */
    uint8_t drop;        /* rows over the first */
    uint8_t width;
    uint8_t height;
    uint8_t advance;
} kiln_glyph_;


static KILN_CONST kiln_glyph_ kiln_glyphs_[] = {
    /* reading: SourceSansPro-Semibold.ttf, 46 px, antialiased, FreeType 2.13.2 */
    /* columns from 0 px off the pen, rows from 33 px over the baseline; bitmaps as runs */
    {    0, 0,  0,  0,  0,  9 }, /* U+0020 */
    {    0, 1, 19, 12,  4, 15 }, /* U+002D - */
    {    4, 1,  4, 21, 29, 24 }, /* U+0030 0 */
    {  176, 3,  4, 18, 29, 24 }, /* U+0031 1 */
    {  207, 1,  4, 21, 29, 24 }, /* U+0032 2 */
    {  325, 1,  4, 21, 29, 24 }, /* U+0033 3 */
    {  466, 0,  4, 23, 29, 24 }, /* U+0034 4 */
    {  573, 1,  4, 21, 29, 24 }, /* U+0035 5 */
    {  697, 2,  4, 20, 29, 24 }, /* U+0036 6 */
    {  854, 2,  4, 20, 29, 24 }, /* U+0037 7 */
    {  948, 1,  4, 21, 29, 24 }, /* U+0038 8 */
    { 1127, 1,  4, 21, 29, 24 }, /* U+0039 9 */
    { 1289, 3,  0, 21, 33, 26 }, /* U+0062 b */
    { 1419, 1, 11, 21, 22, 23 }, /* U+0065 e */
    { 1526, 3, 10, 20, 23, 26 }, /* U+006E n */
    { 1587, 1, 11, 23, 22, 25 }, /* U+006F o */
    { 1715, 3, 11, 21, 31, 26 }, /* U+0070 p */
    { 1842, 3, 10, 15, 23, 17 }, /* U+0072 r */
    /* heading: SourceSansPro-Semibold.ttf, 24 px, one-bit, FreeType 2.13.2 */
    /* columns from 0 px off the pen, rows from 17 px over the baseline; bitmaps as repeats */
    { 1890, 1,  1, 12, 16, 14 }, /* U+0043 C */
    { 1907, 2,  1,  9, 16, 12 }, /* U+0046 F */
    { 1914, 2,  1, 12, 16, 14 }, /* U+004B K */
    { 1934, 1,  5, 10, 12, 12 }, /* U+0061 a */
    { 1950, 1,  0,  4, 17,  6 }, /* U+0069 i */
    { 1956, 2,  0,  4, 17,  7 }, /* U+006C l */
    { 1961, 2,  5, 10, 12, 13 }, /* U+006E n */
    { 1968, 0,  2,  8, 15,  9 }, /* U+0074 t */
    { 1976, 2,  5, 10, 12, 13 }, /* U+0075 u */
    { 1985, 1,  0,  6,  7,  8 }, /* U+00B0 */
    /* text: SourceSansPro-Regular.ttf, 18 px, one-bit, FreeType 2.13.2 */
    /* columns from 0 px off the pen, rows from 13 px over the baseline; bitmaps as repeats */
    {    0, 0,  0,  0,  0,  4 }, /* U+0020 */
    { 1992, 1,  8,  4,  1,  6 }, /* U+002D - */
    { 1994, 1,  2,  7, 11,  9 }, /* U+0030 0 */
    { 2003, 1,  2,  7, 11,  9 }, /* U+0031 1 */
    { 2009, 1,  2,  7, 11,  9 }, /* U+0032 2 */
    { 2021, 0,  2,  8, 11,  9 }, /* U+0033 3 */
    { 2032, 0,  2,  8, 11,  9 }, /* U+0034 4 */
    { 2043, 0,  2,  8, 11,  9 }, /* U+0035 5 */
    { 2054, 1,  2,  7, 11,  9 }, /* U+0036 6 */
    { 2065, 1,  2,  7, 11,  9 }, /* U+0037 7 */
    { 2074, 1,  2,  7, 11,  9 }, /* U+0038 8 */
    { 2085, 1,  2,  7, 11,  9 }, /* U+0039 9 */
    { 2097, 1,  1,  6, 12,  8 }, /* U+003F ? */
    { 2106, 0,  1, 10, 12, 10 }, /* U+0041 A */
    { 2121, 1,  1,  9, 12, 10 }, /* U+0043 C */
    { 2134, 2,  1,  8, 12, 12 }, /* U+0048 H */
    { 2139, 1,  1,  6, 12,  9 }, /* U+004A J */
    { 2144, 2,  1,  8, 12, 10 }, /* U+004B K */
    { 2158, 2,  1,  8, 12, 12 }, /* U+004E N */
    { 2171, 2,  1,  8, 12, 10 }, /* U+0052 R */
    { 2183, 1,  1,  8, 12, 10 }, /* U+0053 S */
    { 2194, 0,  1,  9, 12, 10 }, /* U+0054 T */
    { 2199, 1,  4,  7,  9,  9 }, /* U+0061 a */
    { 2209, 1,  0,  8, 13, 10 }, /* U+0062 b */
    { 2219, 1,  4,  7,  9,  8 }, /* U+0063 c */
    { 2228, 1,  0,  8, 13, 10 }, /* U+0064 d */
    { 2238, 1,  4,  7,  9,  9 }, /* U+0065 e */
    { 2248, 1,  0,  5, 13,  5 }, /* U+0066 f */
    { 2253, 1,  4,  8, 13,  9 }, /* U+0067 g */
    { 2265, 1,  0,  7, 13, 10 }, /* U+0068 h */
    { 2271, 1,  0,  2, 13,  4 }, /* U+0069 i */
    { 2274, 1,  0,  8, 13,  9 }, /* U+006B k */
    { 2286, 1,  0,  3, 13,  5 }, /* U+006C l */
    { 2289, 1,  4, 13,  9, 15 }, /* U+006D m */
    { 2298, 1,  4,  7,  9, 10 }, /* U+006E n */
    { 2303, 1,  4,  8,  9, 10 }, /* U+006F o */
    { 2312, 1,  4,  8, 13, 10 }, /* U+0070 p */
    { 2322, 1,  4,  5,  9,  6 }, /* U+0072 r */
    { 2326, 0,  4,  7,  9,  8 }, /* U+0073 s */
    { 2336, 0,  1,  6, 12,  6 }, /* U+0074 t */
    { 2341, 1,  4,  7,  9, 10 }, /* U+0075 u */
    { 2346, 0,  4,  8,  9,  8 }, /* U+0076 v */
    { 2355, 0,  4, 12,  9, 13 }, /* U+0077 w */
    { 2369, 0,  4,  8, 13,  8 }, /* U+0079 y */
    { 2384, 1,  1,  4,  4,  6 }, /* U+00B0 */
    /* the icons */
    /* columns from 0 px off the pen, rows from 0 px over the baseline; bitmaps as repeats */
    { 2387, 0,  0, 14, 14, 14 }, /* readings radio off */
    { 2396, 0,  0, 14, 14, 14 }, /* readings radio trying-1 */
    { 2407, 0,  0, 14, 14, 14 }, /* readings radio trying-2 */
    { 2422, 0,  0, 14, 14, 14 }, /* readings radio up */
    { 2442, 0,  0, 14, 14, 14 }, /* readings radio fault */
    { 2469, 0,  0, 14, 14, 14 }, /* readings server off */
    { 2491, 0,  0, 14, 14, 14 }, /* readings server trying-1 */
    { 2513, 0,  0, 14, 14, 14 }, /* readings server trying-2 */
    { 2535, 0,  0, 14, 14, 14 }, /* readings server up */
    { 2558, 0,  0, 14, 14, 14 }, /* readings server fault */
};

/* A text or an icon: its place, and what an update repaints. */
typedef struct kiln_part_ {
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
    uint8_t depth;     /* bits a pixel */
    uint8_t form;      /* of its bitmaps */
    uint8_t alignment;
    uint8_t clearing;
} kiln_part_;

#define KILN_INK_(part)       ((part)->ink)
#define KILN_GROUND_(part)    ((part)->ground)
#define KILN_LONGEST_(part)   ((part)->longest)
#define KILN_FIRST_(part)     ((part)->first)
#define KILN_GLYPHS_(part)    ((part)->glyphs)
#define KILN_DEPTH_(part)     ((part)->depth)
#define KILN_FORM_(part)      ((part)->form)
#define KILN_ALIGNMENT_(part) ((part)->alignment)
#define KILN_CLEARING_(part)  ((part)->clearing)
#define KILN_RAMP_(part)      0
#define KILN_NONE_       0
#define KILN_CELL_       1
#define KILN_PAD_        2
#define KILN_BOX_        3
#define KILN_AS_ROWS_    0
#define KILN_AS_REPEATS_ 1
#define KILN_AS_RUNS_    2

static KILN_CONST kiln_part_ kiln_part_start_title_ = {
    KILN_START_TITLE_X, KILN_START_TITLE_BASELINE - 17, KILN_START_TITLE_INK, KILN_START_TITLE_GROUND,
    0, 0, KILN_PANEL_WIDTH, KILN_PANEL_HEIGHT, 4, 18, 10, 1, KILN_AS_REPEATS_, KILN_CENTRED_ON_X,
    KILN_NONE_,
};

static KILN_CONST kiln_part_ kiln_part_start_message_ = {
    KILN_START_MESSAGE_X, KILN_START_MESSAGE_BASELINE - 13, KILN_START_MESSAGE_INK,
    KILN_START_MESSAGE_GROUND, KILN_ACROSS_(KILN_START_MESSAGE_PADDING_X),
    KILN_DOWN_(KILN_START_MESSAGE_PADDING_Y),
    KILN_ACROSS_(KILN_START_MESSAGE_PADDING_X + KILN_START_MESSAGE_PADDING_WIDTH),
    KILN_DOWN_(KILN_START_MESSAGE_PADDING_Y + KILN_START_MESSAGE_PADDING_HEIGHT), 26, 28, 45, 1,
    KILN_AS_REPEATS_, KILN_CENTRED_ON_X, KILN_PAD_,
};

static KILN_CONST kiln_part_ kiln_part_start_caution_ = {
    KILN_START_CAUTION_X, KILN_START_CAUTION_BASELINE - 13, KILN_START_CAUTION_INK,
    KILN_START_CAUTION_GROUND, 0, 0, KILN_PANEL_WIDTH, KILN_PANEL_HEIGHT, 19, 28, 45, 1,
    KILN_AS_REPEATS_, KILN_CENTRED_ON_X, KILN_NONE_,
};

static KILN_CONST kiln_part_ kiln_part_readings_title_ = {
    KILN_READINGS_TITLE_X, KILN_READINGS_TITLE_BASELINE - 13, KILN_READINGS_TITLE_INK,
    KILN_READINGS_TITLE_GROUND, 0, 0, KILN_PANEL_WIDTH, KILN_PANEL_HEIGHT, 4, 28, 45, 1,
    KILN_AS_REPEATS_, KILN_STARTS_AT_X, KILN_NONE_,
};

static KILN_CONST kiln_part_ kiln_part_readings_radio_ = {
    KILN_READINGS_RADIO_X, KILN_READINGS_RADIO_Y, KILN_READINGS_RADIO_INK, KILN_READINGS_RADIO_GROUND,
    KILN_ACROSS_(KILN_READINGS_RADIO_PADDING_X), KILN_DOWN_(KILN_READINGS_RADIO_PADDING_Y),
    KILN_ACROSS_(KILN_READINGS_RADIO_PADDING_X + KILN_READINGS_RADIO_PADDING_WIDTH),
    KILN_DOWN_(KILN_READINGS_RADIO_PADDING_Y + KILN_READINGS_RADIO_PADDING_HEIGHT), 1, 73, 5, 1,
    KILN_AS_REPEATS_, KILN_STARTS_AT_X, KILN_PAD_,
};

static KILN_CONST kiln_part_ kiln_part_readings_server_ = {
    KILN_READINGS_SERVER_X, KILN_READINGS_SERVER_Y, KILN_READINGS_SERVER_INK,
    KILN_READINGS_SERVER_GROUND, KILN_ACROSS_(KILN_READINGS_SERVER_PADDING_X),
    KILN_DOWN_(KILN_READINGS_SERVER_PADDING_Y),
    KILN_ACROSS_(KILN_READINGS_SERVER_PADDING_X + KILN_READINGS_SERVER_PADDING_WIDTH),
    KILN_DOWN_(KILN_READINGS_SERVER_PADDING_Y + KILN_READINGS_SERVER_PADDING_HEIGHT), 1, 78, 5, 1,
    KILN_AS_REPEATS_, KILN_STARTS_AT_X, KILN_PAD_,
};

static KILN_CONST kiln_part_ kiln_part_readings_chamber_ = {
    KILN_READINGS_CHAMBER_X, KILN_READINGS_CHAMBER_BASELINE - 33, KILN_READINGS_CHAMBER_INK,
    KILN_READINGS_CHAMBER_GROUND, KILN_ACROSS_(KILN_READINGS_CHAMBER_PADDING_X),
    KILN_DOWN_(KILN_READINGS_CHAMBER_PADDING_Y),
    KILN_ACROSS_(KILN_READINGS_CHAMBER_PADDING_X + KILN_READINGS_CHAMBER_PADDING_WIDTH),
    KILN_DOWN_(KILN_READINGS_CHAMBER_PADDING_Y + KILN_READINGS_CHAMBER_PADDING_HEIGHT), 8, 0, 18, 4,
    KILN_AS_RUNS_, KILN_ENDS_AT_X, KILN_PAD_,
};

static KILN_CONST kiln_part_ kiln_part_readings_unit_ = {
    KILN_READINGS_UNIT_X, KILN_READINGS_UNIT_BASELINE - 17, KILN_READINGS_UNIT_INK,
    KILN_READINGS_UNIT_GROUND, 0, 0, KILN_PANEL_WIDTH, KILN_PANEL_HEIGHT, 3, 18, 10, 1,
    KILN_AS_REPEATS_, KILN_STARTS_AT_X, KILN_NONE_,
};

static KILN_CONST kiln_part_ kiln_part_readings_set_word_ = {
    KILN_READINGS_SET_WORD_X, KILN_READINGS_SET_WORD_BASELINE - 13, KILN_READINGS_SET_WORD_INK,
    KILN_READINGS_SET_WORD_GROUND, 0, 0, KILN_PANEL_WIDTH, KILN_PANEL_HEIGHT, 3, 28, 45, 1,
    KILN_AS_REPEATS_, KILN_STARTS_AT_X, KILN_NONE_,
};

static KILN_CONST kiln_part_ kiln_part_readings_set_point_ = {
    KILN_READINGS_SET_POINT_X, KILN_READINGS_SET_POINT_BASELINE - 13, KILN_READINGS_SET_POINT_INK,
    KILN_READINGS_SET_POINT_GROUND, KILN_ACROSS_(KILN_READINGS_SET_POINT_PADDING_X),
    KILN_DOWN_(KILN_READINGS_SET_POINT_PADDING_Y),
    KILN_ACROSS_(KILN_READINGS_SET_POINT_PADDING_X + KILN_READINGS_SET_POINT_PADDING_WIDTH),
    KILN_DOWN_(KILN_READINGS_SET_POINT_PADDING_Y + KILN_READINGS_SET_POINT_PADDING_HEIGHT), 8, 28, 45,
    1, KILN_AS_REPEATS_, KILN_ENDS_AT_X, KILN_PAD_,
};

static KILN_CONST kiln_part_ kiln_part_readings_phase_ = {
    KILN_READINGS_PHASE_X, KILN_READINGS_PHASE_BASELINE - 13, KILN_READINGS_PHASE_INK,
    KILN_READINGS_PHASE_GROUND, KILN_ACROSS_(KILN_READINGS_PHASE_PADDING_X),
    KILN_DOWN_(KILN_READINGS_PHASE_PADDING_Y),
    KILN_ACROSS_(KILN_READINGS_PHASE_PADDING_X + KILN_READINGS_PHASE_PADDING_WIDTH),
    KILN_DOWN_(KILN_READINGS_PHASE_PADDING_Y + KILN_READINGS_PHASE_PADDING_HEIGHT), 8, 28, 45, 1,
    KILN_AS_REPEATS_, KILN_ENDS_AT_X, KILN_PAD_,
};

static KILN_CONST kiln_part_ kiln_part_readings_left_ = {
    KILN_READINGS_LEFT_X, KILN_READINGS_LEFT_BASELINE - 13, KILN_READINGS_LEFT_INK,
    KILN_READINGS_LEFT_GROUND, KILN_ACROSS_(KILN_READINGS_LEFT_PADDING_X),
    KILN_DOWN_(KILN_READINGS_LEFT_PADDING_Y),
    KILN_ACROSS_(KILN_READINGS_LEFT_PADDING_X + KILN_READINGS_LEFT_PADDING_WIDTH),
    KILN_DOWN_(KILN_READINGS_LEFT_PADDING_Y + KILN_READINGS_LEFT_PADDING_HEIGHT), 17, 28, 45, 1,
    KILN_AS_REPEATS_, KILN_STARTS_AT_X, KILN_PAD_,
};

static KILN_CONST kiln_part_ kiln_part_fault_title_ = {
    KILN_FAULT_TITLE_X, KILN_FAULT_TITLE_BASELINE - 17, KILN_FAULT_TITLE_INK, KILN_FAULT_TITLE_GROUND,
    0, 0, KILN_PANEL_WIDTH, KILN_PANEL_HEIGHT, 5, 18, 10, 1, KILN_AS_REPEATS_, KILN_CENTRED_ON_X,
    KILN_NONE_,
};

static KILN_CONST kiln_part_ kiln_part_fault_reason_ = {
    KILN_FAULT_REASON_X, KILN_FAULT_REASON_BASELINE - 13, KILN_FAULT_REASON_INK,
    KILN_FAULT_REASON_GROUND, KILN_ACROSS_(KILN_FAULT_REASON_PADDING_X),
    KILN_DOWN_(KILN_FAULT_REASON_PADDING_Y),
    KILN_ACROSS_(KILN_FAULT_REASON_PADDING_X + KILN_FAULT_REASON_PADDING_WIDTH),
    KILN_DOWN_(KILN_FAULT_REASON_PADDING_Y + KILN_FAULT_REASON_PADDING_HEIGHT), 20, 28, 45, 1,
    KILN_AS_REPEATS_, KILN_CENTRED_ON_X, KILN_PAD_,
};

static KILN_CONST kiln_part_ kiln_part_fault_last_ = {
    KILN_FAULT_LAST_X, KILN_FAULT_LAST_BASELINE - 13, KILN_FAULT_LAST_INK, KILN_FAULT_LAST_GROUND,
    KILN_ACROSS_(KILN_FAULT_LAST_PADDING_X), KILN_DOWN_(KILN_FAULT_LAST_PADDING_Y),
    KILN_ACROSS_(KILN_FAULT_LAST_PADDING_X + KILN_FAULT_LAST_PADDING_WIDTH),
    KILN_DOWN_(KILN_FAULT_LAST_PADDING_Y + KILN_FAULT_LAST_PADDING_HEIGHT), 21, 28, 45, 1,
    KILN_AS_REPEATS_, KILN_CENTRED_ON_X, KILN_PAD_,
};

static KILN_CONST kiln_part_ kiln_part_fault_advice_ = {
    KILN_FAULT_ADVICE_X, KILN_FAULT_ADVICE_BASELINE - 13, KILN_FAULT_ADVICE_INK,
    KILN_FAULT_ADVICE_GROUND, 0, 0, KILN_PANEL_WIDTH, KILN_PANEL_HEIGHT, 22, 28, 45, 1,
    KILN_AS_REPEATS_, KILN_CENTRED_ON_X, KILN_NONE_,
};

/* Colours of the levels 1 to 14 of antialiased texts, from ground to ink. */
static KILN_CONST uint16_t kiln_ramps_[][14] = {
    /* glow on soot */
    { 0x1060, 0x20C1, 0x3122, 0x4182, 0x51E3, 0x6223, 0x7284, 0x8AE4, 0x9B45, 0xABA5, 0xBC06, 0xCC66, 0xDCC7, 0xED27 },
};

/* ---- Drawing: one pass over a text or an icon, every pixel painted once, no buffer ------------------------- */

typedef int kiln_px_; /* a place in pixels; 16 bits are enough for every text of this layout */
typedef uint16_t kiln_count_; /* pixels of the panel */

static void kiln_window_(const kiln_port *port, kiln_px_ x, kiln_px_ y, kiln_px_ width, kiln_px_ height)
{
    port->window(port->context, (uint16_t)x, (uint16_t)y, (uint16_t)width, (uint16_t)height);
}

static void kiln_run_(const kiln_port *port, uint16_t colour, kiln_count_ count)
{
#ifdef KILN_BLUE_FIRST
    colour = (uint16_t)(colour >> 11 | (colour & 0x07E0u) | (colour & 31u) << 11);
#endif
#ifdef KILN_LOW_BYTE_FIRST
    colour = (uint16_t)(colour >> 8 | (colour & 0xFFu) << 8);
#endif
    port->run(port->context, colour, count);
}

/* Fill a rectangle that lies on the panel. */
static void kiln_fill_(const kiln_port *port, kiln_px_ x, kiln_px_ y, kiln_px_ width, kiln_px_ height, uint16_t colour)
{
    const kiln_count_ count = (kiln_count_)((kiln_count_)width * (kiln_count_)height);

    if (count) {
        kiln_window_(port, x, y, width, height);
        kiln_run_(port, colour, count);
    }
}

/* Fill what lies on the panel of a rectangle given by constants. */
#define KILN_FILL_(port, x, y, width, height, colour)                                                       \
    kiln_fill_(port, KILN_ACROSS_(x), KILN_DOWN_(y), KILN_ACROSS_((x) + (width)) - KILN_ACROSS_(x),             \
              KILN_DOWN_((y) + (height)) - KILN_DOWN_(y), colour)

/* Fetch a constant into memory. */
static void kiln_load_(void *to, const void *from, uint8_t bytes)
{
    while (bytes--)
        ((uint8_t *)to)[bytes] = KILN_READ8((const uint8_t *)from + bytes);
}

typedef unsigned kiln_bit_; /* a bit within one bitmap */
#define KILN_FULL_(part) ((1u << KILN_DEPTH_(part)) - 1u) /* the level of pure ink */

typedef struct kiln_walk_ {   /* a place in a text */
    kiln_glyph_ glyph;        /* the glyph at the pen */
    uint8_t place;  /* its place among all, from 1; 0 for none */
    kiln_px_ pen;
    const char *next;
} kiln_walk_;

typedef struct kiln_pass_ {
    kiln_walk_ walk, first; /* where it is; where it begins: before the first glyph */
    kiln_part_ part;
    uint16_t ink, colour; /* of the part; of the run that is not yet sent */
    kiln_count_ count;     /* length of that run */
    kiln_px_ x, y;         /* where the next pixel goes */
    const char *end;
    const kiln_port *port;
    unsigned bits; /* where the pixels of the glyph's rows begin */
    uint8_t level; /* of the run before it */
    uint16_t half, row_end; /* the next half of a byte of the bitmaps; where the row ends */
    uint8_t opaque; /* whether ground is painted too */
    uint8_t fixed; /* whether the text lies among the constants */
#ifndef KILN_NO_CHANGES
    uint8_t looking; /* whether pixels are gathered in `seen`, the last lowest, and not painted */
    uint32_t seen;
#endif
} kiln_pass_;

#define KILN_OPAQUE_(pass) ((pass)->opaque)
#define KILN_CHAR_(pass, at) \
    (KILN_APART_ && (pass)->fixed ? (uint8_t)KILN_READ8(at) : *(const uint8_t *)(at))

/* Return the place of a code in an ascending table, counted from 1, or 0 where it is not there. */
static unsigned kiln_find_(const uint16_t *codes, unsigned count, uint16_t code)
{
    unsigned low = 0, half;

    while (count > 1) {
        half = count / 2;
        if (KILN_READ16(codes + low + half) <= code)
            low += half;
        count -= half;
    }
    return KILN_READ16(codes + low) == code ? low + 1 : 0;
}

/* Go on to the next glyph of the text; 0 at its end. A character is its bytes, one after the other as a number;
   those without a glyph are passed over. */
static unsigned kiln_step_(kiln_pass_ *pass)
{
    kiln_walk_ *const walk = &pass->walk;
    unsigned place;

    walk->pen += walk->glyph.advance;
    while (walk->next != pass->end) {
        uint16_t code = KILN_CHAR_(pass, walk->next++);

        if (code >= 0xC0 && walk->next != pass->end && (KILN_CHAR_(pass, walk->next) & 0xC0) == 0x80)
            code = (uint16_t)(code << 8 | KILN_CHAR_(pass, walk->next++));
        place = kiln_find_(kiln_codes_ + KILN_FIRST_(&pass->part), KILN_GLYPHS_(&pass->part), code);
        if (place) {
            place += KILN_FIRST_(&pass->part);
            kiln_load_(&walk->glyph, kiln_glyphs_ + place - 1, sizeof walk->glyph);
            walk->place = (uint8_t)place;
            return 1;
        }
    }
    return 0;
}

/* Send the run that is not yet sent. */
static void kiln_flush_(kiln_pass_ *pass)
{
    if (pass->count) {
        if (!KILN_OPAQUE_(pass))
            kiln_window_(pass->port, pass->x - (kiln_px_)pass->count, pass->y, (kiln_px_)pass->count, 1);
        kiln_run_(pass->port, pass->colour, pass->count);
    }
    pass->count = 0;
}

/* Paint the row up to x with one level; neighbours of one colour become one run. */
static void kiln_to_(kiln_pass_ *pass, kiln_px_ x, unsigned level)
{
    uint16_t colour = level ? pass->ink : KILN_GROUND_(&pass->part);

    if (x > (kiln_px_)pass->part.right)
        x = pass->part.right;
    if (x <= pass->x)
        return;
#ifndef KILN_NO_CHANGES
    if (pass->looking) {
        for (; pass->x < x; ++pass->x)
            pass->seen = (uint32_t)((pass->seen << KILN_DEPTH_(&pass->part)) | (uint32_t)level);
        return;
    }
#endif
    if (level && level != KILN_FULL_(&pass->part))
        colour = KILN_READ16(&kiln_ramps_[KILN_RAMP_(&pass->part)][level - 1]);
    if (colour != pass->colour || (!level && !KILN_OPAQUE_(pass)))
        kiln_flush_(pass);
    if (level || KILN_OPAQUE_(pass))
        pass->count = (kiln_count_)(pass->count + (kiln_count_)(x - pass->x));
    pass->colour = colour;
    pass->x = x;
}

/* Find the pixels of the glyph at the pen, and return which of the rows there a row of it is. */
static unsigned kiln_kept_(kiln_pass_ *pass, unsigned row)
{
    const uint8_t *flags = kiln_bits_ + pass->walk.glyph.first_byte;
    unsigned n, kept = 0;

    pass->bits = pass->walk.glyph.first_byte;
    if (KILN_FORM_(&pass->part) != KILN_AS_REPEATS_)
        return row;
    pass->bits += ((unsigned)pass->walk.glyph.height + 7u) >> 3;
    for (n = 1; n <= row; ++n)
        kept += (((unsigned)KILN_READ8(flags + (n >> 3)) >> (n & 7)) & 1u) ^ 1u;
    return kept;
}

/* Return the level of a pixel of the glyph at the pen. */
static unsigned kiln_level_(const kiln_pass_ *pass, kiln_bit_ pixel)
{
    const uint8_t *bits = kiln_bits_ + pass->bits;

    pixel *= KILN_DEPTH_(&pass->part);
    return ((unsigned)KILN_READ8(bits + (pixel >> 3)) >> (pixel & 7)) & KILN_FULL_(&pass->part);
}

/* Take a half of a byte off the bitmaps. */
static unsigned kiln_half_(kiln_pass_ *pass)
{
    const unsigned byte = KILN_READ8(kiln_bits_ + (pass->half >> 1));

    return pass->half++ & 1 ? byte >> 4 : byte & 15;
}

/* Take a number off the bitmaps: a half, and as long as it is 15 the next half is added. */
static kiln_px_ kiln_number_(kiln_pass_ *pass)
{
    kiln_px_ number = 0;
    unsigned half;

    do {
        half = kiln_half_(pass);
        number += (kiln_px_)half;
    } while (half == 15);
    return number;
}

/* Go to the runs of a row of the glyph at the pen. Before each row stands 0, where it is as the row before, or 1 and
   how many halves it takes. */
static void kiln_seek_(kiln_pass_ *pass, unsigned row)
{
    uint16_t begin = 0;
    kiln_px_ halves;

    pass->half = pass->row_end = (uint16_t)((uint16_t)pass->walk.glyph.first_byte << 1);
    do {
        halves = kiln_number_(pass);
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
static kiln_px_ kiln_next_(kiln_pass_ *pass)
{
    if (KILN_DEPTH_(&pass->part) == 1) {
        pass->level ^= 1;
        return kiln_number_(pass);
    }
    pass->level = (uint8_t)kiln_half_(pass);
    return pass->level == 0 || pass->level == 15 ? kiln_number_(pass) + 1 : 1;
}

/* Paint a row of the area. No two glyphs of a text lie over one another. */
static void kiln_row_(kiln_pass_ *pass)
{
    const kiln_glyph_ *const glyph = &pass->walk.glyph;

    pass->walk = pass->first;
    while (pass->x < pass->part.right && kiln_step_(pass)) {
        const unsigned row = (unsigned)(pass->y - pass->part.y) - glyph->drop;
        kiln_px_ x = pass->walk.pen + glyph->left;

        if (row >= (unsigned)glyph->height)
            continue;
        kiln_to_(pass, x, 0);
        if (KILN_FORM_(&pass->part) == KILN_AS_RUNS_) {
            kiln_seek_(pass, row);
            while (pass->half != pass->row_end) {
                x += kiln_next_(pass);
                kiln_to_(pass, x, pass->level);
            }
        } else {
            const kiln_bit_ first = (kiln_bit_)kiln_kept_(pass, row) * (kiln_bit_)glyph->width;
            kiln_bit_ pixel;

            for (pixel = first; pixel != first + (kiln_bit_)glyph->width; ++pixel)
                kiln_to_(pass, ++x, kiln_level_(pass, pixel));
        }
    }
    kiln_to_(pass, pass->part.right, 0);
}

/* Paint the area of the part. */
static void kiln_paint_(kiln_pass_ *pass)
{
    const kiln_px_ left = pass->part.left, top = pass->part.top;

    pass->count = 0;
    pass->colour = 0;
    if (left >= pass->part.right || top >= pass->part.bottom)
        return;
    if (KILN_OPAQUE_(pass))
        kiln_window_(pass->port, left, top, pass->part.right - left, pass->part.bottom - top);
    for (pass->y = top; pass->y < pass->part.bottom; ++pass->y) {
        pass->x = left;
        kiln_row_(pass);
        if (!KILN_OPAQUE_(pass))
            kiln_flush_(pass);
    }
    kiln_flush_(pass);
}
#ifndef KILN_NO_CHANGES

/* Paint a rectangle. */
static void kiln_paint_area_(kiln_pass_ *pass, kiln_px_ left, kiln_px_ top, kiln_px_ right, kiln_px_ bottom)
{
    pass->part.left = (uint8_t)left;
    pass->part.top = (uint8_t)top;
    pass->part.right = (uint8_t)right;
    pass->part.bottom = (uint8_t)bottom;
    kiln_paint_(pass);
}
#endif

/* Get ready to paint a text; `fixed` tells that it lies among the constants. Return its width. */
static kiln_px_ kiln_open_(kiln_pass_ *pass, const kiln_port *port, const kiln_part_ *part, const char *text, uint8_t fixed, const uint16_t *ink)
{
    kiln_px_ width;
    unsigned rest;

    kiln_load_(&pass->part, part, sizeof pass->part);
    pass->port = port;
    pass->ink = ink ? KILN_READ16(ink) : KILN_INK_(&pass->part);
    pass->fixed = fixed;
#ifndef KILN_NO_CHANGES
    pass->looking = 0;
#endif
    pass->end = text ? text : "";
    pass->walk.next = pass->end;
    pass->walk.pen = 0;
    pass->walk.place = 0;
    pass->walk.glyph.advance = 0;
    pass->first = pass->walk;
    for (rest = KILN_LONGEST_(&pass->part); rest && KILN_CHAR_(pass, pass->end); --rest)
        ++pass->end;
    while (kiln_step_(pass)) {
    }
    width = pass->walk.pen;
    pass->first.pen = pass->part.x;
    pass->first.pen -= (width * KILN_ALIGNMENT_(&pass->part) - (width * KILN_ALIGNMENT_(&pass->part) & 1)) / 2;
    return width;
}

/* Show a text; `fixed` tells that it lies among the constants. */
static void kiln_show_(const kiln_port *port, const kiln_part_ *part, const char *text, uint8_t fixed, const uint16_t *ink)
{
    kiln_pass_ pass;

    (void)kiln_open_(&pass, port, part, text, fixed, ink);
    pass.opaque = KILN_CLEARING_(&pass.part) == KILN_PAD_;
    kiln_paint_(&pass);
}

/* Show an icon: a text of one character, its code the number of the state, from 1. */
static void kiln_show_icon_(const kiln_port *port, const kiln_part_ *part, unsigned states, unsigned state, const uint16_t *inks)
{
    char text[2];

    if (state >= states)
        return;
    text[0] = (char)(state + 1);
    text[1] = '\0';
    kiln_show_(port, part, text, 0, inks ? inks + state : NULL);
}

#ifndef KILN_NO_CHANGES
/* ---- Changes: of a part that is shown already, only what differs ------------------------------------------- */

#define KILN_STRIP_ 8 /* columns looked at together */
#define KILN_COST_  6 /* as many pixels take as long as opening a window */

/* Return the levels of a row of a strip. */
static uint32_t kiln_look_(kiln_pass_ *pass, kiln_px_ left, kiln_px_ right, kiln_px_ y)
{
    pass->seen = 0;
    pass->x = left;
    pass->y = y;
    pass->part.right = (uint8_t)right;
    pass->looking = 1;
    kiln_row_(pass);
    pass->looking = 0;
    return pass->seen;
}

/* Go through a strip and paint the pixels that differ, rows that are cheaper together in one window. */
static void kiln_change_strip_(kiln_pass_ *former, kiln_pass_ *now, const kiln_walk_ *whole, kiln_px_ left, kiln_px_ right)
{
    const kiln_px_ top = former->part.top, bottom = former->part.bottom;
    const kiln_walk_ part_of_it = now->first;
    kiln_px_ y, begin, end, band_left = 0, band_right = 0, band_top = 0, band_bottom = 0;

    for (y = top;; ++y) {
        uint32_t differ = 0;

        begin = end = right;
        if (y < bottom)
            differ = kiln_look_(former, left, right, y) ^ kiln_look_(now, left, right, y);
        if (differ) {
            for (; !(differ & KILN_FULL_(&now->part)); --end)
                differ = (uint32_t)(differ >> KILN_DEPTH_(&now->part));
            for (begin = end; differ; --begin)
                differ = (uint32_t)(differ >> KILN_DEPTH_(&now->part));
        }
        if (band_top < band_bottom) {
            const kiln_px_ least = begin < band_left ? begin : band_left, most = end > band_right ? end : band_right;

            if (begin < end && (most - least) * (y + 1 - band_top) <=
                                   (band_right - band_left) * (band_bottom - band_top) + KILN_COST_ + end - begin) {
                band_left = least;
                band_right = most;
                band_bottom = y + 1;
                continue;
            }
            if (begin < end || y == bottom) {
                now->first = *whole;
                kiln_paint_area_(now, band_left, band_top, band_right, band_bottom);
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
static void kiln_change_(const kiln_port *port, const kiln_part_ *part, const char *shown, const char *text, const uint16_t *ink)
{
    kiln_pass_ former, now;
    kiln_walk_ whole;
    kiln_px_ left, right, until;
    unsigned more, more_now;

    if (!shown) {
        kiln_show_(port, part, text, 0, ink);
        return;
    }
    (void)kiln_open_(&former, port, part, shown, 0, ink);
    (void)kiln_open_(&now, port, part, text, 0, ink);
    now.opaque = 1;
    whole = now.first;
    former.walk = former.first;
    now.walk = now.first;
    left = now.part.right;
    right = now.part.left;
    more = kiln_step_(&former);
    more_now = kiln_step_(&now);
    while (more || more_now) {
        kiln_walk_ *walk = &now.walk;

        if (more && more_now && former.walk.place == now.walk.place && former.walk.pen == now.walk.pen) {
            if (left >= right) { /* nothing differs so far: glyphs before this one need not be looked at */
                former.first = former.walk;
                now.first = now.walk;
            }
            more = kiln_step_(&former);
            more_now = kiln_step_(&now);
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
            more = kiln_step_(&former);
        else
            more_now = kiln_step_(&now);
    }
    if (left < now.part.left)
        left = now.part.left;
    if (right > now.part.right)
        right = now.part.right;
    for (; left < right; left = until) {
        until = right - left > KILN_STRIP_ ? left + KILN_STRIP_ : right;
        kiln_change_strip_(&former, &now, &whole, left, until);
    }
}

/* Bring an icon that is shown up to date; all of it where the inks of the two states differ. */
static void kiln_change_icon_(const kiln_port *port, const kiln_part_ *part, unsigned states, unsigned former,
                             unsigned state, const uint16_t *inks)
{
    char shown[2], text[2];

    if (state >= states)
        return;
    shown[0] = (char)(former + 1);
    text[0] = (char)(state + 1);
    shown[1] = text[1] = '\0';
    if (former < states && inks && KILN_READ16(inks + former) != KILN_READ16(inks + state))
        former = states;
    kiln_change_(port, part, former < states ? shown : NULL, text, inks ? inks + state : NULL);
}
#endif /* KILN_NO_CHANGES */

/* ---- Screens ----------------------------------------------------------------------------------------------- */

void kiln_start_draw(const kiln_port *port, const kiln_start_values *values)
{
    KILN_FILL_(port, 0, 0, KILN_PANEL_WIDTH, KILN_PANEL_HEIGHT, KILN_START_GROUND);
    kiln_show_(port, &kiln_part_start_title_, kiln_text_start_title_, 1, NULL);
    KILN_FILL_(port, KILN_START_LINE_X, KILN_START_LINE_Y, KILN_START_LINE_LENGTH, KILN_START_LINE_THICKNESS,
               KILN_START_LINE_INK);
    kiln_start_message_update(port, values->message);
    kiln_show_(port, &kiln_part_start_caution_, kiln_text_start_caution_, 1, NULL);
}

void kiln_start_message_update(const kiln_port *port, const char *text)
{
    kiln_show_(port, &kiln_part_start_message_, text, 0, NULL);
}

void kiln_readings_draw(const kiln_port *port, const kiln_readings_values *values)
{
    KILN_FILL_(port, 0, 0, KILN_PANEL_WIDTH, KILN_PANEL_HEIGHT, KILN_READINGS_GROUND);
    KILN_FILL_(port, KILN_READINGS_BAR_X, KILN_READINGS_BAR_Y, KILN_READINGS_BAR_WIDTH, KILN_READINGS_BAR_HEIGHT,
               KILN_READINGS_BAR_FILL);
    kiln_show_(port, &kiln_part_readings_title_, kiln_text_readings_title_, 1, NULL);
    kiln_readings_radio_update(port, values->radio);
    kiln_readings_server_update(port, values->server);
    kiln_readings_chamber_update(port, values->chamber);
    kiln_show_(port, &kiln_part_readings_unit_, kiln_text_readings_unit_, 1, NULL);
    KILN_FILL_(port, KILN_READINGS_LINE_X, KILN_READINGS_LINE_Y, KILN_READINGS_LINE_LENGTH,
               KILN_READINGS_LINE_THICKNESS, KILN_READINGS_LINE_INK);
    kiln_show_(port, &kiln_part_readings_set_word_, kiln_text_readings_set_word_, 1, NULL);
    kiln_readings_set_point_update(port, values->set_point);
    kiln_readings_phase_update(port, values->phase);
    kiln_readings_left_update(port, values->left);
}

void kiln_readings_radio_update(const kiln_port *port, uint8_t state)
{
    kiln_show_icon_(port, &kiln_part_readings_radio_, KILN_READINGS_RADIO_STATES, state, kiln_inks_readings_radio_);
}

void kiln_readings_server_update(const kiln_port *port, uint8_t state)
{
    kiln_show_icon_(port, &kiln_part_readings_server_, KILN_READINGS_SERVER_STATES, state,
                    kiln_inks_readings_server_);
}

void kiln_readings_chamber_update(const kiln_port *port, const char *text)
{
    kiln_show_(port, &kiln_part_readings_chamber_, text, 0, NULL);
}

void kiln_readings_set_point_update(const kiln_port *port, const char *text)
{
    kiln_show_(port, &kiln_part_readings_set_point_, text, 0, NULL);
}

void kiln_readings_phase_update(const kiln_port *port, const char *text)
{
    kiln_show_(port, &kiln_part_readings_phase_, text, 0, NULL);
}

void kiln_readings_left_update(const kiln_port *port, const char *text)
{
    kiln_show_(port, &kiln_part_readings_left_, text, 0, NULL);
}

void kiln_fault_draw(const kiln_port *port, const kiln_fault_values *values)
{
    KILN_FILL_(port, 0, 0, KILN_PANEL_WIDTH, KILN_PANEL_HEIGHT, KILN_FAULT_GROUND);
    KILN_FILL_(port, KILN_FAULT_FRAME_X, KILN_FAULT_FRAME_Y, KILN_FAULT_FRAME_WIDTH, KILN_FAULT_FRAME_THICKNESS,
               KILN_FAULT_FRAME_OUTLINE);
    KILN_FILL_(port, KILN_FAULT_FRAME_X, KILN_FAULT_FRAME_Y + KILN_FAULT_FRAME_HEIGHT - KILN_FAULT_FRAME_THICKNESS,
               KILN_FAULT_FRAME_WIDTH, KILN_FAULT_FRAME_THICKNESS, KILN_FAULT_FRAME_OUTLINE);
    KILN_FILL_(port, KILN_FAULT_FRAME_X, KILN_FAULT_FRAME_Y + KILN_FAULT_FRAME_THICKNESS,
               KILN_FAULT_FRAME_THICKNESS, KILN_FAULT_FRAME_HEIGHT - 2 * KILN_FAULT_FRAME_THICKNESS,
               KILN_FAULT_FRAME_OUTLINE);
    KILN_FILL_(port, KILN_FAULT_FRAME_X + KILN_FAULT_FRAME_WIDTH - KILN_FAULT_FRAME_THICKNESS,
               KILN_FAULT_FRAME_Y + KILN_FAULT_FRAME_THICKNESS, KILN_FAULT_FRAME_THICKNESS,
               KILN_FAULT_FRAME_HEIGHT - 2 * KILN_FAULT_FRAME_THICKNESS, KILN_FAULT_FRAME_OUTLINE);
    kiln_show_(port, &kiln_part_fault_title_, kiln_text_fault_title_, 1, NULL);
    kiln_fault_reason_update(port, values->reason);
    kiln_fault_last_update(port, values->last);
    kiln_show_(port, &kiln_part_fault_advice_, kiln_text_fault_advice_, 1, NULL);
}

void kiln_fault_reason_update(const kiln_port *port, const char *text)
{
    kiln_show_(port, &kiln_part_fault_reason_, text, 0, NULL);
}

void kiln_fault_last_update(const kiln_port *port, const char *text)
{
    kiln_show_(port, &kiln_part_fault_last_, text, 0, NULL);
}

#ifndef KILN_NO_CHANGES
void kiln_start_message_change(const kiln_port *port, const char *former, const char *text)
{
    kiln_change_(port, &kiln_part_start_message_, former, text, NULL);
}

void kiln_readings_radio_change(const kiln_port *port, uint8_t former, uint8_t state)
{
    kiln_change_icon_(port, &kiln_part_readings_radio_, KILN_READINGS_RADIO_STATES, former, state,
                      kiln_inks_readings_radio_);
}

void kiln_readings_server_change(const kiln_port *port, uint8_t former, uint8_t state)
{
    kiln_change_icon_(port, &kiln_part_readings_server_, KILN_READINGS_SERVER_STATES, former, state,
                      kiln_inks_readings_server_);
}

void kiln_readings_chamber_change(const kiln_port *port, const char *former, const char *text)
{
    kiln_change_(port, &kiln_part_readings_chamber_, former, text, NULL);
}

void kiln_readings_set_point_change(const kiln_port *port, const char *former, const char *text)
{
    kiln_change_(port, &kiln_part_readings_set_point_, former, text, NULL);
}

void kiln_readings_phase_change(const kiln_port *port, const char *former, const char *text)
{
    kiln_change_(port, &kiln_part_readings_phase_, former, text, NULL);
}

void kiln_readings_left_change(const kiln_port *port, const char *former, const char *text)
{
    kiln_change_(port, &kiln_part_readings_left_, former, text, NULL);
}

void kiln_fault_reason_change(const kiln_port *port, const char *former, const char *text)
{
    kiln_change_(port, &kiln_part_fault_reason_, former, text, NULL);
}

void kiln_fault_last_change(const kiln_port *port, const char *former, const char *text)
{
    kiln_change_(port, &kiln_part_fault_last_, former, text, NULL);
}

#endif /* KILN_NO_CHANGES */

/* ---- Texts of fields --------------------------------------------------------------------------------------- */

#ifndef KILN_NO_TEXT_FUNCTIONS
#include <stdio.h>

/* Copy a text, as much of it as there is room for; return its bytes. `fixed` tells that it lies among the constants. */
static int kiln_copy_(char *buffer, size_t room, const char *text, uint8_t fixed)
{
    size_t bytes = 0;

    for (; bytes + 1 < room; ++bytes, ++text) {
        buffer[bytes] = KILN_APART_ && fixed ? (char)KILN_READ8(text) : *text;
        if (!buffer[bytes])
            return (int)bytes;
    }
    buffer[bytes] = '\0';
    return (int)bytes;
}

/* Return a text of a row of texts that each end with a zero. */
static const char *kiln_choice_(const char *texts, int choice)
{
    for (; choice; --choice)
        while (KILN_READ8(texts++)) {
        }
    return texts;
}

int kiln_start_message_text(char *buffer, int choice)
{
    static KILN_CONST char texts[] = "Starting\000Checking the probe\000Joining the workshop radio\000Asking the logging server\000Setting the clock\000Ready";

    if (choice < 0 || choice >= 6)
        return -1;
    return kiln_copy_(buffer, KILN_START_MESSAGE_TEXT_BYTES, kiln_choice_(texts, choice), 1);
}

int kiln_readings_chamber_text(char *buffer, int value)
{
    static KILN_CONST char fault[] = KILN_READINGS_CHAMBER_FAULT;

    if (value < KILN_READINGS_CHAMBER_LEAST || value > KILN_READINGS_CHAMBER_GREATEST)
        return kiln_copy_(buffer, KILN_READINGS_CHAMBER_TEXT_BYTES, fault, 1);
    return snprintf(buffer, KILN_READINGS_CHAMBER_TEXT_BYTES, KILN_READINGS_CHAMBER_FORMAT, value);
}

int kiln_readings_set_point_text(char *buffer, unsigned int value)
{
    static KILN_CONST char fault[] = KILN_READINGS_SET_POINT_FAULT;

    if (value > KILN_READINGS_SET_POINT_GREATEST)
        return kiln_copy_(buffer, KILN_READINGS_SET_POINT_TEXT_BYTES, fault, 1);
    if ((value - KILN_READINGS_SET_POINT_LEAST) % KILN_READINGS_SET_POINT_STEP)
        return kiln_copy_(buffer, KILN_READINGS_SET_POINT_TEXT_BYTES, fault, 1);
    return snprintf(buffer, KILN_READINGS_SET_POINT_TEXT_BYTES, KILN_READINGS_SET_POINT_FORMAT, value);
}

int kiln_readings_phase_text(char *buffer, int choice)
{
    static KILN_CONST char fault[] = KILN_READINGS_PHASE_FAULT;
    static KILN_CONST char texts[] = "idle\000warming\000ramp 1\000ramp 2\000ramp 3\000soak\000cooling\000finished";

    if (choice < 0 || choice >= 8)
        return kiln_copy_(buffer, KILN_READINGS_PHASE_TEXT_BYTES, fault, 1);
    return kiln_copy_(buffer, KILN_READINGS_PHASE_TEXT_BYTES, kiln_choice_(texts, choice), 1);
}

int kiln_readings_left_text(char *buffer, unsigned int value_1, unsigned int value_2)
{
    static KILN_CONST char fault[] = KILN_READINGS_LEFT_FAULT;

    if (value_1 > KILN_READINGS_LEFT_GREATEST_1)
        return kiln_copy_(buffer, KILN_READINGS_LEFT_TEXT_BYTES, fault, 1);
    if (value_2 > KILN_READINGS_LEFT_GREATEST_2)
        return kiln_copy_(buffer, KILN_READINGS_LEFT_TEXT_BYTES, fault, 1);
    return snprintf(buffer, KILN_READINGS_LEFT_TEXT_BYTES, KILN_READINGS_LEFT_FORMAT, value_1, value_2);
}

int kiln_fault_reason_text(char *buffer, int choice)
{
    static KILN_CONST char fault[] = KILN_FAULT_REASON_FAULT;
    static KILN_CONST char texts[] = "Thermocouple open\000Thermocouple shorted\000Heating too slowly\000Hotter than set\000Controller too warm";

    if (choice < 0 || choice >= 5)
        return kiln_copy_(buffer, KILN_FAULT_REASON_TEXT_BYTES, fault, 1);
    return kiln_copy_(buffer, KILN_FAULT_REASON_TEXT_BYTES, kiln_choice_(texts, choice), 1);
}

int kiln_fault_last_text(char *buffer, int value)
{
    static KILN_CONST char fault[] = KILN_FAULT_LAST_FAULT;

    if (value < KILN_FAULT_LAST_LEAST || value > KILN_FAULT_LAST_GREATEST)
        return kiln_copy_(buffer, KILN_FAULT_LAST_TEXT_BYTES, fault, 1);
    return snprintf(buffer, KILN_FAULT_LAST_TEXT_BYTES, KILN_FAULT_LAST_FORMAT, value);
}
#endif /* KILN_NO_TEXT_FUNCTIONS */

#endif /* KILN_IMPLEMENTATION */

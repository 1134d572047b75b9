/* A display with a memory of its own behind a bus of bytes, that takes the commands of the MIPI Display Command Set:
   2Ah and 2Bh set the columns and rows of an address window, 2Ch begins to fill it, 36h turns and mirrors.

   The bus is one function of yours. It sends bytes with the data/command line as `command` says (1: a command, 0: its
   parameters or pixels):

       static void send(void *bus, int command, const uint8_t *bytes, size_t count);

   The glass may be smaller than the memory behind it. Say once, as the glass lies when it is not turned, how large both are
   and where in the memory the glass begins; `stream_turn` then sends the address mode and works out the offset of
   each quarter turn. Here 135 x 240 pixels of glass at column 52, row 40 of 240 x 320, turned once clockwise:

       static const stream_glass glass = {240, 320, 135, 240, 52, 40};
       stream_display display = {send, &spi, 0, 0};
       stream_turn(&display, &glass, 1, 0);
       kiln_port port = {stream_window, stream_run, &display};

   A display that is not turned by the address mode, or whose layout gives the offset as it is turned, takes where the
   picture begins from the header, which names what is not 0 (KILN_PANEL_OFFSET_X, KILN_PANEL_OFFSET_Y), in place of the two
   zeros above.

   Pixels of 16 bits go over the bus high byte first, as the standard says. Where a display wants the low byte first, or
   has red and blue the other way round, let the header make its colours so; red and blue can be changed by the address mode,
   too (STREAM_BLUE_FIRST). */

#ifndef BYTE_STREAM_HEADER
#define BYTE_STREAM_HEADER

#include <stddef.h>
#include <stdint.h>

/* Bits of the address mode (36h). */
#define STREAM_ROWS_BACKWARDS    0x80u
#define STREAM_COLUMNS_BACKWARDS 0x40u
#define STREAM_EXCHANGED         0x20u /* the window's columns run along the memory's rows */
#define STREAM_BLUE_FIRST        0x08u

typedef struct stream_display {
    void (*send)(void *bus, int command, const uint8_t *bytes, size_t count);
    void *bus;
    uint16_t offset_x, offset_y; /* where the picture begins in the memory, as the display is turned now */
} stream_display;

typedef struct stream_glass {
    uint16_t columns, rows;           /* of the memory */
    uint16_t width, height;           /* of the glass */
    uint16_t first_column, first_row; /* of the glass in the memory */
} stream_glass;

static inline void stream_command(const stream_display *display, uint8_t command, const uint8_t *bytes, size_t count)
{
    display->send(display->bus, 1, &command, 1);
    if (count)
        display->send(display->bus, 0, bytes, count);
}

/* Turn the picture clockwise by so many quarters; `more` are other bits of the address mode. */
static inline void stream_turn(stream_display *display, const stream_glass *glass, unsigned quarters, uint8_t more)
{
    const uint16_t last_column = (uint16_t)(glass->columns - glass->first_column - glass->width);
    const uint16_t last_row = (uint16_t)(glass->rows - glass->first_row - glass->height);
    uint8_t mode = more;

    display->offset_x = glass->first_column;
    display->offset_y = glass->first_row;
    switch (quarters % 4u) {
    case 1:
        mode |= STREAM_EXCHANGED | STREAM_COLUMNS_BACKWARDS;
        display->offset_x = glass->first_row;
        display->offset_y = last_column;
        break;
    case 2:
        mode |= STREAM_COLUMNS_BACKWARDS | STREAM_ROWS_BACKWARDS;
        display->offset_x = last_column;
        display->offset_y = last_row;
        break;
    case 3:
        mode |= STREAM_EXCHANGED | STREAM_ROWS_BACKWARDS;
        display->offset_x = last_row;
        display->offset_y = glass->first_column;
        break;
    default:
        break;
    }
    stream_command(display, 0x36, &mode, 1);
}

static inline void stream_span(const stream_display *display, uint8_t command, uint16_t first, uint16_t count)
{
    const uint16_t last = (uint16_t)(first + count - 1u);
    uint8_t bytes[4];

    bytes[0] = (uint8_t)(first >> 8);
    bytes[1] = (uint8_t)(first & 0xffu);
    bytes[2] = (uint8_t)(last >> 8);
    bytes[3] = (uint8_t)(last & 0xffu);
    stream_command(display, command, bytes, sizeof bytes);
}

static inline void stream_window(void *context, uint16_t x, uint16_t y, uint16_t width, uint16_t height)
{
    const stream_display *display = (const stream_display *)context;

    stream_span(display, 0x2a, (uint16_t)(x + display->offset_x), width);
    stream_span(display, 0x2b, (uint16_t)(y + display->offset_y), height);
    stream_command(display, 0x2c, NULL, 0);
}

static inline void stream_run(void *context, uint16_t colour, uint32_t count)
{
    const stream_display *display = (const stream_display *)context;
    uint8_t bytes[32]; /* the longer, the fewer calls of `send` a filled area takes */
    const size_t most = sizeof bytes / 2;
    size_t ready = 0, now;

    while (count) {
        now = count < most ? (size_t)count : most;
        for (; ready < now; ++ready) {
            bytes[2 * ready] = (uint8_t)(colour >> 8);
            bytes[2 * ready + 1] = (uint8_t)(colour & 0xffu);
        }
        display->send(display->bus, 0, bytes, 2 * now);
        count -= (uint32_t)now;
    }
}

#endif

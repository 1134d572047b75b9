/* A frame buffer of one bit a pixel in row order, as most e-paper controllers take it: a byte holds eight pixels side by
   side, the left one in its highest bit; each row begins with a new byte.

       static uint8_t bytes[(200 + 7) / 8 * 200];
       rows_frame frame = {bytes, (200 + 7) / 8, 0, 0, 0, 0};
       kiln_port port = {rows_window, rows_run, &frame}; */

#ifndef FRAME_ROWS_HEADER
#define FRAME_ROWS_HEADER

#include <stddef.h>
#include <stdint.h>

typedef struct rows_frame {
    uint8_t *bytes;
    uint16_t row_bytes;         /* bytes from one row to the next */
    uint16_t left, right, x, y; /* the window, and where in it the next pixel goes */
} rows_frame;

static inline void rows_window(void *context, uint16_t x, uint16_t y, uint16_t width, uint16_t height)
{
    rows_frame *frame = (rows_frame *)context;

    (void)height;
    frame->left = frame->x = x;
    frame->right = (uint16_t)(x + width);
    frame->y = y;
}

static inline void rows_run(void *context, uint16_t colour, uint32_t count)
{
    rows_frame *frame = (rows_frame *)context;

    while (count--) {
        uint8_t *byte = frame->bytes + (size_t)frame->y * frame->row_bytes + frame->x / 8u;
        const uint8_t bit = (uint8_t)(0x80u >> (frame->x % 8u));

        *byte = (uint8_t)(colour ? *byte | bit : *byte & ~bit);
        if (++frame->x == frame->right) {
            frame->x = frame->left;
            ++frame->y;
        }
    }
}

#endif

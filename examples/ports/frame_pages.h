/* A frame buffer of one bit a pixel in page order, as many small monochrome controllers keep theirs: a byte holds eight
   pixels one under the other, the top one in its lowest bit; the bytes of a page go from left to right, then comes the
   next page, eight rows further down.

       static uint8_t bytes[128 * 64 / 8];
       pages_frame frame = {bytes, 128, 0, 0, 0, 0};
       rain_tank_port port = {pages_window, pages_run, &frame};

   A buffer takes width * ((height + 7) / 8) bytes. */

#ifndef FRAME_PAGES_HEADER
#define FRAME_PAGES_HEADER

#include <stddef.h>
#include <stdint.h>

typedef struct pages_frame {
    uint8_t *bytes;
    uint16_t width;             /* pixels across, and bytes in a page */
    uint16_t left, right, x, y; /* the window, and where in it the next pixel goes */
} pages_frame;

static inline void pages_window(void *context, uint16_t x, uint16_t y, uint16_t width, uint16_t height)
{
    pages_frame *frame = (pages_frame *)context;

    (void)height;
    frame->left = frame->x = x;
    frame->right = (uint16_t)(x + width);
    frame->y = y;
}

static inline void pages_run(void *context, uint16_t colour, uint32_t count)
{
    pages_frame *frame = (pages_frame *)context;

    while (count--) {
        uint8_t *byte = frame->bytes + (size_t)(frame->y / 8u) * frame->width + frame->x;
        const uint8_t bit = (uint8_t)(1u << (frame->y % 8u));

        *byte = (uint8_t)(colour ? *byte | bit : *byte & ~bit);
        if (++frame->x == frame->right) {
            frame->x = frame->left;
            ++frame->y;
        }
    }
}

#endif

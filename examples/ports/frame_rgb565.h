/* A frame buffer of 16-bit pixels in memory, row after row.

       static uint16_t pixels[240 * 135];
       rgb565_frame frame = {pixels, 240, 0, 0, 0, 0};
       kiln_port port = {rgb565_window, rgb565_run, &frame};

   The words lie in memory in the processor's own byte order. Where a display reads them in the other one, let the header
   make its colours so, and leave this file as it is. */

#ifndef FRAME_RGB565_HEADER
#define FRAME_RGB565_HEADER

#include <stddef.h>
#include <stdint.h>

typedef struct rgb565_frame {
    uint16_t *pixels;
    uint16_t width;             /* pixels from one row to the next */
    uint16_t left, right, x, y; /* the window, and where in it the next pixel goes */
} rgb565_frame;

static inline void rgb565_window(void *context, uint16_t x, uint16_t y, uint16_t width, uint16_t height)
{
    rgb565_frame *frame = (rgb565_frame *)context;

    (void)height;
    frame->left = frame->x = x;
    frame->right = (uint16_t)(x + width);
    frame->y = y;
}

static inline void rgb565_run(void *context, uint16_t colour, uint32_t count)
{
    rgb565_frame *frame = (rgb565_frame *)context;

    while (count--) {
        frame->pixels[(size_t)frame->y * frame->width + frame->x] = colour;
        if (++frame->x == frame->right) {
            frame->x = frame->left;
            ++frame->y;
        }
    }
}

#endif

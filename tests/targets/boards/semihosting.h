/* The host's services through a debugger's trap, as Arm's semihosting specification numbers them; RISC-V takes the
   same numbers. `board_call` is the processor's own. */

#ifndef SEMIHOSTING_HEADER
#define SEMIHOSTING_HEADER

#include "board.h"

enum { OPEN = 0x01, WRITE = 0x05, EXIT_EXTENDED = 0x20, WRITE_MODE = 5, ENDED = 0x20026 };

uintptr_t board_call(uintptr_t service, const void *argument);
int main(void);

/* The places that the linker script names. */
extern uint32_t data_from[], data_begin[], data_end[], bss_begin[], bss_end[], stack_top[];

void board_send(const char *bytes, unsigned count)
{
    static const char name[] = "records.txt";
    static uintptr_t file;
    uintptr_t words[3];

    if (!file) {
        words[0] = (uintptr_t)name;
        words[1] = WRITE_MODE;
        words[2] = sizeof name - 1;
        file = board_call(OPEN, words);
    }
    words[0] = file;
    words[1] = (uintptr_t)bytes;
    words[2] = count;
    if (board_call(WRITE, words))
        board_stop(90);
}

void board_stop(int code)
{
    uintptr_t words[2];

    words[0] = ENDED;
    words[1] = (uintptr_t)code;
    for (;;)
        (void)board_call(EXIT_EXTENDED, words);
}

/* Memory as C expects it, then the program. */
static void begin(void)
{
    const uint32_t *from = data_from;
    uint32_t *to;

    for (to = data_begin; to < data_end;)
        *to++ = *from++;
    for (to = bss_begin; to < bss_end;)
        *to++ = 0;
    board_stop(main());
}

#endif

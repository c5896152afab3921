# What goes where on `cmake --install`?  tests/structure/test_install.py installs, builds against
# it, and takes it away again.

configure_file(packaging/towershaft.pc.in "${CMAKE_BINARY_DIR}/towershaft.pc" @ONLY)

if(TARGET towershaft)
    install(TARGETS towershaft)
    install(FILES packaging/towershaft.1 DESTINATION "${CMAKE_INSTALL_MANDIR}/man1")
    # The command writes its own completion scripts, so that they never lag behind its options.
    foreach(shell_place
            "bash|${CMAKE_INSTALL_DATADIR}/bash-completion/completions|towershaft"
            "zsh|${CMAKE_INSTALL_DATADIR}/zsh/vendor-completions|_towershaft"
            "fish|${CMAKE_INSTALL_DATADIR}/fish/vendor_completions.d|towershaft.fish")
        string(REPLACE "|" ";" shell_place "${shell_place}")
        list(GET shell_place 0 shell)
        list(GET shell_place 1 place)
        list(GET shell_place 2 name)
        set(script "${CMAKE_BINARY_DIR}/completions/${name}")
        add_custom_command(OUTPUT "${script}"
            COMMAND "${CMAKE_COMMAND}" -E make_directory "${CMAKE_BINARY_DIR}/completions"
            COMMAND towershaft complete ${shell} > "${script}"
            DEPENDS towershaft VERBATIM)
        list(APPEND completions "${script}")
        install(FILES "${script}" DESTINATION "${place}" OPTIONAL)
    endforeach()
    add_custom_target(completions DEPENDS ${completions})
endif()
if(TARGET towershaft_ranks)
    install(TARGETS towershaft_ranks DESTINATION "${CMAKE_INSTALL_LIBDIR}/towershaft")
endif()
if(TARGET towershaft_shared)
    install(TARGETS towershaft_shared)
    install(DIRECTORY include/towershaft DESTINATION "${CMAKE_INSTALL_INCLUDEDIR}"
        FILES_MATCHING PATTERN "*.h")
    install(FILES "${CMAKE_BINARY_DIR}/towershaft.pc"
        DESTINATION "${CMAKE_INSTALL_LIBDIR}/pkgconfig")
endif()
install(FILES LICENSE README.md CHANGELOG.md web/built/licences.txt DESTINATION "${CMAKE_INSTALL_DOCDIR}")
install(DIRECTORY examples DESTINATION "${CMAKE_INSTALL_DOCDIR}")

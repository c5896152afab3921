# What goes where on `cmake --install`?

if(TARGET towershaft)
    install(TARGETS towershaft)
endif()
if(TARGET towershaft_ranks)
    install(TARGETS towershaft_ranks DESTINATION "${CMAKE_INSTALL_LIBDIR}/towershaft")
endif()
if(TARGET towershaft_shared)
    install(TARGETS towershaft_shared)
endif()
install(DIRECTORY include/towershaft DESTINATION "${CMAKE_INSTALL_INCLUDEDIR}"
    FILES_MATCHING PATTERN "*.h")
install(FILES LICENSE DESTINATION "${CMAKE_INSTALL_DOCDIR}")
